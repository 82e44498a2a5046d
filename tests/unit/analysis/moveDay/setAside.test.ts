import { describe, expect, it } from 'vitest';
import { leastAside, type Precedence } from '#model/analysis/moveDay/setAside.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { runs } from '#tests/support/runs.ts';

const arrows = (...pairs: [number, number][]): Precedence[] => pairs.map(([first, second]) => ({ first, second, kind: 'off-on' }));

describe('the fewest pieces to set aside', () => {
  it('none where nothing goes in a circle', () => {
    expect(leastAside(3, arrows([0, 1], [1, 2], [0, 2]))).toEqual({ sets: [[]], isLeast: true });
  });

  it('one of two that change places: either will do', () => {
    expect(leastAside(2, arrows([0, 1], [1, 0]))).toEqual({ sets: [[0], [1]], isLeast: true });
  });

  it('the one that two circles share', () => {
    expect(leastAside(5, arrows([0, 1], [1, 0], [1, 2], [2, 3], [3, 1], [3, 4])).sets).toEqual([[1]]);
  });

  it('a rug that lies under what it waits for: rolling it up does not free it of what stands on it', () => {
    // Unit 0 stands on rug 1, and is to stand on it again.
    expect(
      leastAside(2, [
        { first: 0, second: 1, kind: 'off-off' },
        { first: 1, second: 0, kind: 'on-on' },
      ]).sets,
    ).toEqual([[0]]);
  });

  it('says when it was given up', () => {
    const everybody = Array.from({ length: 8 }, (_, i) => Array.from({ length: 8 }, (_, j): [number, number] => [i, j])).flat();
    const all = arrows(...everybody.filter(([i, j]) => i !== j));
    expect(leastAside(8, all).sets[0]).toHaveLength(7);
    const { sets, isLeast } = leastAside(8, all, 10);
    expect(isLeast).toBe(false);
    expect(sets[0]).toHaveLength(7);
  });
});

// Against every subset of up to seven units, least first: a minimum feedback vertex set by definition. Our own, no source.
it('is a least feedback vertex set, as trying out all subsets has it', () => {
  for (let seed = 1; seed <= runs(400, 20_000); seed++) {
    const random = seededRandom(seed);
    const n = 2 + Math.floor(random() * 6);
    const edges: [number, number][] = [];
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) if (i !== j && random() < 0.12 + 0.4 * (seed % 3 === 0 ? 1 : 0.4)) edges.push([i, j]);
    const least = bySubsets(n, edges);
    const { sets, isLeast } = leastAside(n, arrows(...edges), 100_000_000);
    expect(isLeast, `seed ${seed}`).toBe(true);
    expect(new Set(sets.map(String)), `seed ${seed}`).toEqual(new Set(least.map(String)));
    expect(sets.length, `seed ${seed}`).toBe(least.length);
  }
});

function bySubsets(n: number, edges: readonly [number, number][]): number[][] {
  const found: number[][] = [];
  for (let bits = 0; bits < 1 << n; bits++) {
    const out = Array.from({ length: n }, (_, i) => i).filter((i) => bits & (1 << i));
    if (found[0] && out.length > found[0].length) continue;
    let rest = Array.from({ length: n }, (_, i) => i).filter((i) => !out.includes(i));
    // What nobody in the rest comes before can go first; what is left at the end goes in a circle.
    for (let free = rest; free.length > 0; ) {
      free = rest.filter((i) => !edges.some(([p, q]) => q === i && rest.includes(p)));
      rest = rest.filter((i) => !free.includes(i));
    }
    if (rest.length > 0) continue;
    if (found[0] && out.length < found[0].length) found.length = 0;
    found.push(out);
  }
  return found;
}
