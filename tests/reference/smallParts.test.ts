import { describe, expect, it } from 'vitest';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { boxPoints, fitsInside, longestIn, roundPoints } from '#model/geometry/truncatedCylinder.ts';
import { fitsCylinder } from '#model/measures/smallParts.ts';
import { smallPartsCylinder } from '#model/standards/smallPartsCylinder.ts';
import { indexRow } from '#tests/support/standardsIndex.ts';

// 16 CFR 1501.4 (row D05): a cylinder 1.25 in across whose slanted floor lies 1 in to 2.25 in deep. No worked example of
// the standard was found; the boxes are hand geometry. The floor falls by 1.25 in over 1.25 in, that is at 45 degrees, so
// the depth at u mm from the deep side is 57.15 - u.
const INCH = 25.4;
const box = (a: number, b: number, c: number) => fitsInside(boxPoints([a, b, c]), smallPartsCylinder);

describe('the small parts cylinder', () => {
  it('has the printed figures (Canada prints mm, cut off after the first decimal)', () => {
    const { values } = indexRow('D05');
    expect(smallPartsCylinder).toEqual({ across: 1.25 * INCH, shallow: INCH, deep: 2.25 * INCH, underMonths: 36 });
    expect(Math.floor(smallPartsCylinder.across * 10) / 10).toBe(values.cylinder_diameter_mm);
    expect(smallPartsCylinder.shallow).toBe(values.depth_min_mm);
    expect(Math.floor(smallPartsCylinder.deep * 10) / 10).toBe(values.depth_max_mm);
  });
  it('holds a square bar upright as long as its diagonal is no longer than the cylinder is wide', () => {
    const side = smallPartsCylinder.across / Math.SQRT2; // 22.45
    expect(box(side - 0.01, side - 0.01, 25.4)).toBe(true);
    expect(box(23, 23, 23)).toBe(false);
    // Lying corner to corner along the slope, its far edge stands 31.75 from the deep side: only 25.4 deep there.
    // Turned by 45 degrees its edges are across the slope and the far edge stands (31.75 + 22.45) / 2 = 27.1 from it.
    expect(box(side - 0.01, side - 0.01, 57.15 - 27.1 - 0.03)).toBe(true);
    expect(box(side - 0.01, side - 0.01, 57.15 - 27.1 + 0.5)).toBe(false);
  });
  it('holds a thin square plate upright on edge: s <= 57.15 - s, 28.575', () => {
    expect(box(28.5, 28.5, 0.2)).toBe(true);
  });
  it('holds a thin rod from the rim to the deepest point and no longer one: hypot(31.75, 57.15)', () => {
    const longest = Math.hypot(31.75, 57.15); // 65.377
    expect(longestIn(smallPartsCylinder)).toBeCloseTo(longest, 9);
    expect(box(0.05, 0.05, longest - 0.2)).toBe(true);
    expect(fitsCylinder([0.05, 0.05, longest + 0.01])).toBe('no');
  });
  it('holds a ball of 31: its middle 15.5 below the rim is 18.2 from the slanted floor', () => {
    expect((41.275 - 15.5) / Math.SQRT2).toBeGreaterThan(15.5);
    expect(fitsInside(roundPoints([31, 31, 31]), smallPartsCylinder)).toBe(true);
    expect(fitsInside(roundPoints([33, 33, 33]), smallPartsCylinder)).toBe(false);
    expect(fitsCylinder([31, 31, 31])).toBe('doubtful'); // a bead fits, a die does not
  });
  it('says fits of every box for which blind trying finds a position', () => {
    const random = seededRandom(1501);
    let found = 0;
    for (let i = 0; i < 40; i++) {
      const extents = [2 + 20 * random(), 5 + 22 * random(), 20 + 35 * random()] as const;
      if (!blindlyFits(extents, random)) continue;
      found += 1;
      expect(fitsCylinder([...extents]), extents.join(' x ')).toBe('fits');
    }
    expect(found).toBeGreaterThan(5);
  });
});

/** Tries 4000 random turns and places of a box corner by corner, written apart from the model. */
function blindlyFits([a, b, c]: readonly [number, number, number], random: () => number): boolean {
  for (let k = 0; k < 4000; k++) {
    // A random turn as a unit quaternion.
    const q = Array.from({ length: 4 }, () => random() + random() + random() - 1.5);
    const norm = Math.hypot(...q);
    const [w = 0, x = 0, y = 0, z = 0] = q.map((part) => part / norm);
    const u = [1 - 2 * (y * y + z * z), 2 * (x * y + w * z), 2 * (x * z - w * y)];
    const v = [2 * (x * y - w * z), 1 - 2 * (x * x + z * z), 2 * (y * z + w * x)];
    const n = [2 * (x * z + w * y), 2 * (y * z - w * x), 1 - 2 * (x * x + y * y)];
    const corners = [1, -1].flatMap((i) =>
      [1, -1].flatMap((j) =>
        [1, -1].map((m) => [0, 1, 2].map((d) => ((i * a) / 2) * (u[d] ?? 0) + ((j * b) / 2) * (v[d] ?? 0) + ((m * c) / 2) * (n[d] ?? 0))),
      ),
    );
    const top = Math.max(...corners.map((p) => p[2] ?? 0));
    const shiftX = 15.875 * (random() * 2 - 1);
    const shiftY = 6 * (random() * 2 - 1);
    const isIn = corners.every(([px = 0, py = 0, pz = 0]) => {
      const [cx, cy, cz] = [px + shiftX, py + shiftY, pz - top];
      return Math.hypot(cx, cy) <= 15.875 && -cz <= 41.275 + cx;
    });
    if (isIn) return true;
  }
  return false;
}
