import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { PairsApart } from '#model/geometry/pairsApart.ts';
import { type PickLimit, pickWith } from '#model/geometry/pickMost.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';

const pick = pickWith(await loadHighs());

const known = (count: number, limits: readonly PickLimit[]): PairsApart => {
  const pairs = new PairsApart(count);
  for (const limit of limits) pairs.add(limit);
  return pairs;
};

/** Every choice that keeps the limits, as bits. */
function choices(count: number, limits: readonly PickLimit[]): number[] {
  const masks = limits.map(({ members, most }) => ({ most, mask: members.reduce((bits, k) => bits | (1 << k), 0) }));
  const ones = (bits: number): number => bits.toString(2).replaceAll('0', '').length;
  return Array.from({ length: 2 ** count }, (_, choice) => choice).filter((choice) =>
    masks.every(({ mask, most }) => ones(choice & mask) <= most),
  );
}

const best = (count: number, limits: readonly PickLimit[]): number => {
  const parts = pick.parts(count, limits);
  try {
    return parts.solve().shares.reduce((sum, share) => sum + share, 0);
  } finally {
    parts.end();
  }
};

const randomLimits = (random: () => number, count: number): PickLimit[] =>
  Array.from({ length: 16 }, () => {
    const members = Array.from({ length: count }, (_, k) => k).filter(() => random() < 0.25);
    return { members, most: random() < 0.8 ? 1 : 2 };
  }).filter(({ members, most }) => members.length > most);

describe('pairs that do not go together', () => {
  // The odd cycle of three is the textbook's example of what pairs alone let pass (Padberg 1973, clique inequalities).
  it('make one limit of three pairs, which let three halves pass', () => {
    const pairs: PickLimit[] = [
      { members: [0, 1], most: 1 },
      { members: [1, 2], most: 1 },
      { members: [0, 2], most: 1 },
    ];
    expect(best(3, pairs)).toBeCloseTo(1.5, 6);
    const wide = known(3, pairs).widened(pairs);
    expect(wide).toEqual([{ members: [0, 1, 2], most: 1 }]);
    expect(best(3, wide)).toBeCloseTo(1, 6);
    expect(known(3, pairs).brokenBy([0.5, 0.5, 0.5], 0.01)).toEqual(wide);
    expect(known(3, pairs).brokenBy([0.4, 0.3, 0.3], 0.01)).toEqual([]);
  });

  it('leave limits of more than one as they are, and know things past the first word of bits', () => {
    const limits: PickLimit[] = [
      { members: [2, 33, 64], most: 2 },
      { members: [31, 32], most: 1 },
      { members: [32, 95], most: 1 },
      { members: [31, 95], most: 1 },
    ];
    expect(known(96, limits).widened(limits)).toEqual([
      { members: [2, 33, 64], most: 2 },
      { members: [31, 32, 95], most: 1 },
    ]);
  });

  it('add to a limit of several what leaves one fewer of its members free, and nothing else', () => {
    // 3 goes with 2 alone of the first; 4 goes with 1 and 2, so that all three may be chosen.
    const limits: PickLimit[] = [
      { members: [0, 1, 2], most: 2 },
      { members: [0, 3], most: 1 },
      { members: [1, 3], most: 1 },
      { members: [0, 4], most: 1 },
    ];
    expect(known(5, limits).widened(limits)[0]).toEqual({ members: [0, 1, 2, 3], most: 2 });
    // Halves of 0, 1 and 3 beside all of 2 keep the first ones.
    const without4 = limits.slice(0, 3);
    expect(best(4, without4)).toBeCloseTo(2.5, 6);
    expect(best(4, known(4, without4).widened(without4))).toBeCloseTo(2, 6);
  });

  it('add nothing where taking one after the other finds no choice as large as there is', () => {
    const apart = [
      [0, 4],
      [0, 6],
      [0, 7],
      [0, 8],
      [0, 9],
      [1, 3],
      [1, 5],
      [1, 7],
      [2, 7],
      [2, 9],
      [3, 6],
      [3, 7],
      [4, 9],
      [5, 7],
      [5, 8],
      [6, 8],
    ];
    const three = { members: [0, 1, 2, 3, 4, 5, 6, 7, 8], most: 3 };
    const limits: PickLimit[] = [three, ...apart.map((members) => ({ members, most: 1 }))];
    const wide = known(10, limits).widened(limits);
    expect(wide[0]).toEqual(three);
    expect(choices(10, wide)).toEqual(choices(10, limits));
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'seed %i: the same choices keep the widened limits as kept the first, and parts take no more',
    (seed) => {
      const random = seededRandom(seed);
      const count = 12;
      const limits = randomLimits(random, count);
      const pairs = known(count, limits);
      const wide = pairs.widened(limits);
      expect(choices(count, wide)).toEqual(choices(count, limits));
      const most = best(count, limits);
      expect(best(count, wide)).toBeLessThanOrEqual(most + 1e-6);
      // What is broken by halves of everything is a limit that every choice keeps.
      const halves = new Array<number>(count).fill(0.5);
      const broken = pairs.brokenBy(halves, 0.01);
      expect(choices(count, [...limits, ...broken])).toEqual(choices(count, limits));
      for (const { members, most: one } of broken) expect(members.length / 2).toBeGreaterThan(one);
    },
  );

  it('lowers what parts take in some of those', () => {
    const lowered = [1, 2, 3, 4, 5, 6, 7, 8].filter((seed) => {
      const limits = randomLimits(seededRandom(seed), 12);
      return best(12, known(12, limits).widened(limits)) < best(12, limits) - 0.01;
    });
    expect(lowered.length).toBeGreaterThan(0);
  });
});
