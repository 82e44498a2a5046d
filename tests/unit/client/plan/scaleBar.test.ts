import { describe, expect, it } from 'vitest';
import { scaleLength } from '#client/plan/scaleBar.ts';

describe('the scale bar', () => {
  it.each([
    // 0.0462 px to the mm: a room of 8 m on a laptop
    [0.0462, 'metric', '1 m', 46.2],
    [0.0128, 'metric', '5 m', 64],
    [0.0015, 'metric', '20 m', 30],
    [0.0462, 'imperial', "3'", 42.2],
    [0.0128, 'imperial', "10'", 39],
  ] as const)('at %d px to the mm in %s is %s', (k, units, words, px) => {
    const bar = scaleLength(k, units);
    expect(bar.words).toBe(words);
    expect(bar.px).toBeCloseTo(px, 0);
  });

  it('has its true length however far the drawing is seen from', () => {
    const { px, words } = scaleLength(1e-6, 'metric');
    expect([words, px]).toEqual(['1000 m', 1]);
  });
});
