import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type PickLimit, pickWith } from '#model/geometry/pickMost.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';

const pick = pickWith(await loadHighs());
const NODES = 1000;

/** By looking at every choice there is. */
function mostByLooking(count: number, limits: readonly PickLimit[]): number {
  let most = 0;
  for (let choice = 0; choice < 2 ** count; choice++) {
    const has = (k: number): boolean => ((choice >> k) & 1) === 1;
    if (limits.some((limit) => limit.members.filter(has).length > limit.most)) continue;
    most = Math.max(most, Array.from({ length: count }, (_, k) => k).filter(has).length);
  }
  return most;
}

function limitsBy(random: () => number, count: number): PickLimit[] {
  return Array.from({ length: 9 }, () => {
    const members = Array.from({ length: count }, (_, k) => k).filter(() => random() < 0.35);
    return { members, most: 1 + Math.floor(random() * 2) };
  }).filter(({ members, most }) => members.length > most);
}

describe('picking as many as limits allow', () => {
  const count = 11;
  it.each([1, 2, 3, 4, 5, 6])('seed %i: the most there is is found, one more is refused, parts are never below it', (seed) => {
    const random = seededRandom(seed);
    const limits = limitsBy(random, count);
    const most = mostByLooking(count, limits);
    const { members } = pick.enough({ count, limits, atLeast: most, nodes: NODES });
    expect(members?.length).toBeGreaterThanOrEqual(most);
    for (const limit of limits) expect(limit.members.filter((k) => members?.includes(k)).length).toBeLessThanOrEqual(limit.most);
    expect(pick.enough({ count, limits, atLeast: most + 1, nodes: NODES })).toEqual({ members: null, bound: most });

    const parts = pick.parts(count, limits);
    try {
      const first = parts.solve();
      expect(first.bound).toBeGreaterThanOrEqual(most);
      expect(first.shares).toHaveLength(count);
      // A limit added later counts as one from the start.
      const more = limitsBy(random, count);
      parts.add(more);
      expect(parts.solve().bound).toBeGreaterThanOrEqual(mostByLooking(count, [...limits, ...more]));
      expect(parts.solve().bound).toBeLessThanOrEqual(first.bound);
      parts.add([{ members: Array.from({ length: count }, (_, k) => k), most: 2 }]);
      expect(parts.solve().bound).toBeLessThanOrEqual(2);
    } finally {
      parts.end();
    }
  });

  it('more than there are is refused unasked', () => {
    expect(pick.enough({ count: 3, limits: [], atLeast: 4, nodes: NODES })).toEqual({ members: null, bound: 3 });
  });
});
