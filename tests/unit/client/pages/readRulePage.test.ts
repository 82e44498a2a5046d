import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRulePage } from '#client/pages/readRulePage.ts';
import { rulePages } from '#client/pages/rulePages.ts';
import { rules } from '#model/rules/registry.ts';
import { pageHeadings } from '#tests/support/rulePages.ts';

const house = resolve(import.meta.dirname, '../../../..');

describe('a page of a rule', () => {
  it('is read into headings, paragraphs, lists, names and its room', () => {
    const page = readRulePage(
      '# Is it so?\n\n## What it asks\n\nOne line\nand its rest, see `way/door`.\n\n- first,\n  going on\n- `wide` (3 mm)\n\n## A room that trips it\n\nWords.\n\n```json\n{ "ruleSet": "england" }\n```\n',
    );
    expect(page).toEqual({
      asks: 'Is it so?',
      sections: [
        {
          heading: 'What it asks',
          blocks: [
            { kind: 'words', spans: ['One line and its rest, see ', { code: 'way/door' }, '.'] },
            { kind: 'list', items: [['first, going on'], [{ code: 'wide' }, ' (3 mm)']] },
          ],
        },
        {
          heading: 'A room that trips it',
          blocks: [
            { kind: 'words', spans: ['Words.'] },
            { kind: 'room', change: { ruleSet: 'england' } },
          ],
        },
      ],
    });
  });
  it('is refused when it holds what the app would show wrong, naming the line', () => {
    for (const line of ['| a | b |', 'see [there](x.md)', '**loud**', '<b>bold</b>', '1. first', '### deeper', '> quoted'])
      expect(() => readRulePage(`# A\n\n## B\n\n${line}\n`), line).toThrow('line 5');
    expect(() => readRulePage('# A\n\n## B\n\n```json\n{}\n')).toThrow('does not end');
  });
});

describe('the pages that the app carries', () => {
  it('are those of every rule', () => {
    expect([...rulePages.keys()].sort()).toEqual(rules.map(({ id }) => id).sort());
  });
  it.each(rules.map(({ id, asks }) => [id, asks] as const))('%s: nothing of the page is lost', (id, asks) => {
    const page = rulePages.get(id);
    expect(page?.asks).toBe(asks);
    expect(page?.sections.map(({ heading }) => `## ${heading}`)).toEqual(pageHeadings);
    expect(page?.sections.filter(({ blocks }) => blocks.some(({ kind }) => kind === 'room')).length).toBe(2);
    const said = page?.sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) => {
        if (block.kind === 'room') return [];
        return (block.kind === 'list' ? block.items : [block.spans]).flat().map((span) => (typeof span === 'string' ? span : span.code));
      }),
    );
    const written = readFileSync(resolve(house, `shared-model/rules/${id}.md`), 'utf8')
      .replace(/```json\n[\s\S]*?```/g, '')
      .replace(/^#.*$/gm, '');
    expect(letters(said?.join('') ?? '')).toBe(letters(written));
  });
});

/** Without blanks and marks of lists and names. */
const letters = (text: string): string => text.replace(/^- /gm, '').replace(/[\s`-]/g, '');
