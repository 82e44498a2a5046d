import { describe, expect, it } from 'vitest';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { drawChoice } from '#model/measures/matDraws.ts';

describe('choices drawn by shares', () => {
  it('keep every limit, and leave out nothing with a share that would still fit', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 200; round++) {
      const count = 12;
      const shares = Array.from({ length: count }, () => (random() < 0.3 ? 0 : random()));
      const limits = Array.from({ length: 6 }, () => ({
        members: Array.from({ length: count }, (_, k) => k).filter(() => random() < 0.4),
        most: Math.floor(random() * 3),
      }));
      const drawn = drawChoice(shares, limits, random);
      const used = limits.map(({ members }) => members.filter((k) => drawn.includes(k)).length);
      limits.forEach(({ most }, i) => {
        expect(used[i]).toBeLessThanOrEqual(most);
      });
      for (let k = 0; k < count; k++) {
        if (drawn.includes(k)) expect(shares[k]).toBeGreaterThan(0);
        else if ((shares[k] as number) > 0)
          expect(limits.some(({ members, most }, i) => members.includes(k) && used[i] === most)).toBe(true);
      }
    }
  });

  it('take the greater share more often, in the proportion of the shares', () => {
    const random = seededRandom(8);
    const limits = [{ members: [0, 1], most: 1 }];
    let first = 0;
    for (let round = 0; round < 4000; round++) if (drawChoice([0.75, 0.25], limits, random)[0] === 0) first++;
    expect(first / 4000).toBeCloseTo(0.75, 1);
  });
});
