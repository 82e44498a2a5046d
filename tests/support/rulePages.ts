import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PlainRoomChange } from './plainRoom.ts';

export const pageHeadings = [
  '## What it asks',
  '## Why',
  '## Source',
  '## A room that trips it',
  '## A room that passes',
  '## When it cannot tell',
  '## Options',
  '## When to leave it',
];

/** The same as the app shows them: what is worked out comes after the two rooms. */
export const shownHeadings = [
  'What it asks',
  'Why',
  'A room that trips it',
  'A room that passes',
  'What is worked out',
  'Source',
  'When it cannot tell',
  'Options',
  'When to leave it',
];

export const readPage = (house: string, id: string): string => readFileSync(join(house, 'shared-model/rules', `${id}.md`), 'utf8');

/** The one json block below a heading of a rule's page. */
export function pageExample(page: string, heading: string): PlainRoomChange {
  const section = page.split(`${heading}\n`)[1]?.split('\n## ')[0] ?? '';
  const block = /```json\n([\s\S]*?)```/.exec(section)?.[1];
  if (block === undefined) throw new Error(`no json block under "${heading}"`);
  return JSON.parse(block) as PlainRoomChange;
}

/** Names every part that a rule lacks; empty when all are whole. */
export function missingParts(house: string, ids: readonly string[], registered: readonly string[]): string[] {
  return ids.flatMap((id) => [
    ...(registered.includes(id) ? [] : [`${id}: no line in shared-model/rules/registry.ts`]),
    ...[`shared-model/rules/${id}.ts`, `shared-model/rules/${id}.md`, `tests/unit/rules/${id}.test.ts`]
      .filter((path) => !existsSync(join(house, path)))
      .map((path) => `${id}: no ${path}`),
  ]);
}
