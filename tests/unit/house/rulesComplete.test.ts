import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { rules } from '#model/rules/registry.ts';
import { buildScene } from '#model/scene/build.ts';
import { sourceText } from '#model/standards/sources.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { missingParts, pageExample, pageHeadings, readPage } from '#tests/support/rulePages.ts';

const here = resolve(import.meta.dirname, '../../..');
const ruleFolder = join(here, 'shared-model/rules');
const idsOnDisk = readdirSync(ruleFolder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .flatMap((group) =>
    readdirSync(join(ruleFolder, group.name))
      .filter((file) => file.endsWith('.ts'))
      .map((file) => `${group.name}/${file.replace('.ts', '')}`),
  );

describe('every rule is whole', () => {
  it('has one registry line, a source file, a page and a test', () => {
    expect(
      missingParts(
        here,
        [...new Set([...idsOnDisk, ...rules.map((r) => r.id)])],
        rules.map((r) => r.id),
      ),
    ).toEqual([]);
  });
  it('and a missing part is named', () => {
    expect(missingParts(here, ['way/nowhere'], [])).toEqual([
      'way/nowhere: no line in shared-model/rules/registry.ts',
      'way/nowhere: no shared-model/rules/way/nowhere.ts',
      'way/nowhere: no shared-model/rules/way/nowhere.md',
      'way/nowhere: no tests/unit/rules/way/nowhere.test.ts',
    ]);
  });
  it('no id stands twice', () => {
    const ids = rules.map((r) => r.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe.each(rules.map((rule) => [rule.id, rule] as const))('the page of %s', (id, rule) => {
  const page = existsSync(join(ruleFolder, `${id}.md`)) ? readPage(here, id) : '';
  const judge = (change: PlainRoomChange) => {
    const scene = buildScene(plainRoom(change));
    return judgeRule(rule, scene, measuresOf(scene)).answer;
  };
  it('has the fixed headings', () => {
    expect(page.match(/^#{1,2} .*$/gm)).toEqual([`# ${rule.asks}`, ...pageHeadings]);
  });
  it('begins with a sentence that is soon read', () => {
    const [first = ''] = /(?<=## What it asks\n\n).*?[.?](?=\s)/s.exec(page) ?? [];
    expect(first.split(/\s/).length, first).toBeGreaterThan(3);
    expect(first.split(/\s/).length, first).toBeLessThanOrEqual(26);
  });
  it('shows a room that trips it', () => expect(judge(pageExample(page, '## A room that trips it'))).toBe('problem'));
  it('shows a room that passes', () => expect(judge(pageExample(page, '## A room that passes'))).toBe('fine'));
  it('names every option', () => {
    for (const option of Object.keys(rule.options.shape)) expect(page).toContain(`\`${option}\``);
  });
  it('cites sources that exist', () => {
    for (const source of rule.sources) expect(sourceText(source), source).toBeTruthy();
  });
  it('has defaults for every option', () => expect(rule.options.safeParse({}).success).toBe(true));
  it('reads as told by its declaration', () => {
    expect(readFileSync(join(ruleFolder, `${id}.ts`), 'utf8')).toContain(`'${id}'`);
  });
});
