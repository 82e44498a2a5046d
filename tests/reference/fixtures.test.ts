import { describe, expect, it } from 'vitest';
import { judgeRule } from '#model/analysis/report.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { fixtures } from '#model/rules/places/fixtures.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { workedExample } from '#tests/support/standardsIndex.ts';

function judge(ruleSet: string, count: number, toilets: number | null, basins: number | null) {
  const children = { groups: [{ id: 'g1', fromMonths: 36, toMonths: 48, count }] };
  const scene = buildScene(plainRoom({ ruleSet, children, room: { toilets, basins } }));
  return judgeRule(fixtures, scene, measuresOf(scene));
}

// Licensing reports of California (W06, W08, W09): how many children the toilets and basins serve. By toilets W08 is our
// own product of its figures.
describe('toilets and basins, against licensing reports', () => {
  it.each(['W06', 'W08', 'W09'])('%s: the printed number is the most that passes', (id) => {
    const { inputs, expected } = workedExample(id);
    const [toilets, basins] = [Number(inputs.toilets), Number(inputs.basins)];
    const byToilets = Number(expected.by_toilets);
    const byBasins = Number(expected.by_basins);
    expect(judge('us-california', byToilets, toilets, 1000).answer).toBe('fine');
    expect(judge('us-california', byToilets + 1, toilets, 1000).answer).toBe('problem');
    expect(judge('us-california', byBasins, 1000, basins).answer).toBe('fine');
    expect(judge('us-california', byBasins + 1, 1000, basins).answer).toBe('problem');
  });
});

// Scotland (W18): the example prints 3 and 4 toilets for 34 and 35 children, the sentence asks for 4 and 4.
describe('Scottish toilets, between the sentence and the example', () => {
  const { inputs, expected } = workedExample('W18');
  const numbers = (list: unknown): number[] => (Array.isArray(list) ? list.map(Number) : []);
  const [children, printed, sentence] = [
    numbers(inputs.children),
    numbers(expected.toilets_as_printed),
    numbers(expected.by_sentence_ceil),
  ];
  it('has two cases', () => expect([children.length, printed.length, sentence.length]).toEqual([2, 2, 2]));
  it.each(children.map((count, i) => [count, printed[i] ?? 0, sentence[i] ?? 0] as const))('%i children', (count, example, asked) => {
    expect(judge('scotland', count, asked, null).answer).toBe('fine');
    expect(judge('scotland', count, example - 1, null).answer).toBe('problem');
    if (example < asked) expect(judge('scotland', count, example, null).answer).toBe('cannot-tell');
  });
});
