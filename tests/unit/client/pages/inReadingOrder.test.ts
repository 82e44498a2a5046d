import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { inReadingOrder } from '#client/pages/inReadingOrder.ts';
import { readRulePage } from '#client/pages/readRulePage.ts';
import { shownHeadings } from '#tests/support/rulePages.ts';

const page = (path: string) => readRulePage(readFileSync(resolve(import.meta.dirname, '../../../../shared-model/rules', path), 'utf8'));

it('says in short what is asked and why, shows the two rooms, and then how it is worked out', () => {
  const { sections } = page('floor/mats.md');
  const ordered = inReadingOrder(sections);
  expect(ordered.map(({ heading }) => heading)).toEqual(shownHeadings);
  expect(ordered[0]?.blocks).toHaveLength(1);
});

it.each(['floor/mats.md', 'order/sequence.md', 'way/width.md'])('keeps every word of %s', (path) => {
  const { sections } = page(path);
  const blocks = (all: typeof sections) => all.flatMap((section) => section.blocks.map((block) => JSON.stringify(block))).sort();
  expect(blocks(inReadingOrder(sections))).toEqual(blocks(sections));
});

it('leaves a page as it is that asks in one paragraph', () => {
  const sections = [
    { heading: 'What it asks', blocks: [{ kind: 'words' as const, spans: ['One line.'] }] },
    { heading: 'Source', blocks: [] },
    { heading: 'Why', blocks: [] },
  ];
  expect(inReadingOrder(sections)).toEqual(sections);
});
