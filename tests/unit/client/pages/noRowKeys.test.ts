import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRulePage, type Span } from '#client/pages/readRulePage.ts';
import { rules } from '#model/rules/registry.ts';
import { sources, sourceText } from '#model/standards/sources.ts';

// A key such as C01 names a row of our own index: nobody else can look it up.
const isKey = (word: string): boolean => /^[A-Z]{1,4}\d{2,4}$/.test(word) && Object.hasOwn(sources, word);
const keysIn = (text: string): string[] => text.split(/[^A-Za-z0-9]+/).filter(isKey);
const said = (span: Span): string => (typeof span === 'string' ? span : span.code);

const folder = resolve(import.meta.dirname, '../../../../shared-model/rules');
const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
  (path) => path.endsWith('.md') && !path.includes('generated'),
);

describe('what people read of a source', () => {
  it('finds a key where there is one', () => expect(keysIn('rows C01 (England), C03 (Scotland)')).toEqual(['C01', 'C03']));

  it.each(pages)('page %s has no key of a row', (path) => {
    const { sections } = readRulePage(readFileSync(resolve(folder, path), 'utf8'));
    const words = sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'words' ? block.spans : block.kind === 'list' ? block.items.flat() : [])).map(said),
    );
    expect(words.flatMap(keysIn)).toEqual([]);
  });

  it.each(rules.map(({ id, messages, sources: cited }) => ({ id, messages, cited })))(
    '$id says none and writes its sources out',
    (rule) => {
      expect(Object.values(rule.messages).flatMap(keysIn)).toEqual([]);
      for (const key of rule.cited.filter(isKey)) {
        expect(sourceText(key)).toContain(sources[key]?.document);
        expect(sourceText(key)).toContain(sources[key]?.edition);
        expect(keysIn(sourceText(key))).toEqual([]);
      }
    },
  );
});
