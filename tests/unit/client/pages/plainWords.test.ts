import { describe, expect, it } from 'vitest';
import { optionLine, plainSpans, sayOption } from '#client/pages/plainWords.ts';
import type { Span } from '#client/pages/readRulePage.ts';
import { rulePages } from '#client/pages/rulePages.ts';
import { rules } from '#model/rules/registry.ts';

const textOf = (spans: readonly Span[]): string => spans.map((span) => (typeof span === 'string' ? span : `\`${span.code}\``)).join('');

describe.each(rules.map((rule) => [rule.id, rule] as const))('the page of %s on the sheet', (id, rule) => {
  const sections = rulePages.get(id)?.sections ?? [];
  const names = Object.keys(rule.options.shape);
  const defaults = rule.options.parse({}) as Readonly<Record<string, unknown>>;

  it('speaks of no file, no setting by its name in the file, and no mathematics', () => {
    const shown = sections.flatMap(({ heading, blocks }) =>
      blocks.flatMap((block) => {
        if (block.kind === 'room') return [];
        if (block.kind === 'words') return [textOf(plainSpans(block.spans))];
        return block.items.map((spans) => textOf((heading === 'Options' && optionLine(spans, names)?.says) || plainSpans(spans)));
      }),
    );
    const codes = shown.flatMap((text) => [...text.matchAll(/`([^`]*)`/g)].map(([, code]) => code ?? ''));
    expect(codes.filter((code) => !rulePages.has(code))).toEqual([]);
    for (const text of shown) expect(text).not.toMatch(/tests\/|\.ts\b|antichain|Tests?:|\btrue\b|\bfalse\b/);
    for (const text of shown) expect(text.trim(), id).not.toBe('');
  });

  it('says what each setting is, in words', () => {
    const lines = sections
      .filter(({ heading }) => heading === 'Options')
      .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'list' ? block.items : [])))
      .map((spans) => optionLine(spans, names));
    expect(lines.flatMap((line) => line?.names ?? []).sort()).toEqual([...names].sort());
    for (const line of lines) {
      if (!line) throw new Error(`${id}: a line of the options is none`);
      const said = sayOption(line, {}, defaults);
      expect(said).toMatch(/^In this class: .*, the default\.$/);
      expect(said).not.toMatch(/true|false|null|undefined|[a-z][A-Z]/);
      expect(textOf(line.says).charAt(0)).toMatch(/[A-Z]/);
    }
  });
});

describe('a setting', () => {
  const line = (text: string, ...known: string[]) => {
    const found = optionLine(
      text
        .split('`')
        .map((part, i) => (i % 2 === 1 ? { code: part } : part))
        .filter((part) => part !== ''),
      known,
    );
    if (!found) throw new Error('it is a setting');
    return found;
  };
  it('is told with its unit, and against the default where the class has its own', () => {
    const angle = line('`angle` (15 degrees): the flattest sight line that counts.', 'angle');
    expect(angle.says).toEqual(['The flattest sight line that counts.']);
    expect(sayOption(angle, {}, { angle: 15 })).toBe('In this class: 15 degrees, the default.');
    expect(sayOption(angle, { angle: 20 }, { angle: 15 })).toBe('In this class: 20 degrees, a class rule; the default is 15 degrees.');
  });
  it('is yes or no', () => {
    const life = line('`practicalLife` (false): whether it is judged.', 'practicalLife');
    expect(sayOption(life, { practicalLife: true }, { practicalLife: false })).toBe('In this class: yes, a class rule; the default is no.');
  });
  it('goes by the rules where it is no figure, and two in one line are told apart', () => {
    const both = line('`perToilet`, `perBasin` (as the rule set says): the class’s own figures.', 'perToilet', 'perBasin');
    expect(sayOption(both, { perBasin: 12 }, { perToilet: null, perBasin: null })).toBe(
      'In this class: to a toilet as the rule set says, the default; to a basin 12, a class rule; the default is as the rule set says.',
    );
  });
});
