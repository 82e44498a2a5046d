import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type PickLimit, pickWith } from '#model/geometry/pickMost.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';

const highs = await loadHighs();
const pick = pickWith(highs);
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

  it('cut off by the clock, it claims nothing that it does not know', () => {
    // Triples of 90 things, no two of which share a pair: far too hard for a twentieth of a second.
    const hurried = pickWith(highs, () => 0);
    const many = 90;
    const random = seededRandom(11);
    const limits = Array.from({ length: 260 }, () => ({ members: pickThree(random, many), most: 1 }));
    const patient = pick.parts(many, limits);
    const least = patient.solve().bound;
    patient.end();
    for (const atLeast of [5, least]) {
      const start = performance.now();
      const { members, bound } = hurried.enough({ count: many, limits, atLeast, nodes: 1e6 });
      expect(performance.now() - start).toBeLessThan(10_000);
      if (members) {
        expect(members.length).toBeGreaterThanOrEqual(atLeast);
        for (const limit of limits) expect(limit.members.filter((k) => members.includes(k)).length).toBeLessThanOrEqual(1);
        expect(bound).toBeGreaterThanOrEqual(members.length);
      }
    }
    // What is known to fit is never said not to.
    const fit = pick.enough({ count: many, limits, atLeast: 1, nodes: NODES }).members?.length ?? 0;
    expect(hurried.enough({ count: many, limits, atLeast: fit, nodes: 1e6 }).bound).toBeGreaterThanOrEqual(fit);
  });
});

function pickThree(random: () => number, count: number): number[] {
  const three = new Set<number>();
  while (three.size < 3) three.add(Math.floor(random() * count));
  return [...three].sort((p, q) => p - q);
}
