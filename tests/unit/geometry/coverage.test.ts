import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addedAreas, areaWithin, coveredArea } from '#model/geometry/coverage.ts';
import type { Polygon } from '#model/geometry/polygon.ts';
import { turn } from '#model/geometry/vec.ts';

const rect = (x: number, y: number, w: number, d: number): Polygon => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + d },
  { x, y: y + d },
];
const room = rect(-3000, 2000, 6000, 5000);
const corner: Polygon = [
  { x: 0, y: 0 },
  { x: 6000, y: 0 },
  { x: 6000, y: 3000 },
  { x: 3000, y: 3000 },
  { x: 3000, y: 5000 },
  { x: 0, y: 5000 },
];

describe('area within a room', () => {
  it('is exact for what lies inside, also turned', () => {
    const turned = rect(-600, -160, 1200, 320).map((p) => ({ x: turn(p, 33).x, y: turn(p, 33).y + 4000 }));
    expect(areaWithin(turned, room)).toBeCloseTo(384000, 6);
  });
  it('is cut off at the walls', () => {
    expect(areaWithin(rect(-3500, 2000, 1000, 1000), room)).toBeCloseTo(500000, 3);
    expect(areaWithin(rect(-9000, 2000, 1000, 1000), room)).toBe(0);
  });
  it('follows a room with an inner corner', () => {
    expect(areaWithin(rect(100, 100, 1000, 1000), corner)).toBe(1e6);
    // 1000 x 1000 about the inner corner at (3000, 3000): three quarters lie inside.
    expect(areaWithin(rect(2500, 2500, 1000, 1000), corner)).toBeCloseTo(750000, 3);
    // Every corner inside, and the inner corner of the room cuts into it all the same.
    const across: Polygon = [
      { x: 2900, y: 4900 },
      { x: 5900, y: 2900 },
      { x: 2900, y: 2900 },
    ];
    expect(areaWithin(across, corner)).toBeLessThan(3e6 - 1);
  });
  it('takes rings either way round', () => {
    expect(coveredArea([[...rect(0, 3000, 1000, 1000)].reverse(), rect(500, 3000, 1000, 1000)], [...room].reverse())).toBeCloseTo(1.5e6, 3);
  });
  it('is nothing for nothing', () => expect(coveredArea([], room)).toBe(0));
});

const box = fc.record({
  x: fc.integer({ min: -1000, max: 7000 }),
  y: fc.integer({ min: -1000, max: 6000 }),
  w: fc.integer({ min: 1, max: 3000 }),
  d: fc.integer({ min: 1, max: 3000 }),
});

/** Union of boxes within 0..6000 x 0..5000 by coordinate compression: whole numbers, exact. */
function byCells(boxes: readonly { x: number; y: number; w: number; d: number }[]): number {
  const cuts = (values: number[], end: number) => [...new Set([0, end, ...values.filter((v) => v > 0 && v < end)])].sort((a, b) => a - b);
  const xs = cuts(
    boxes.flatMap((b) => [b.x, b.x + b.w]),
    6000,
  );
  const ys = cuts(
    boxes.flatMap((b) => [b.y, b.y + b.d]),
    5000,
  );
  let sum = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    for (let j = 0; j + 1 < ys.length; j++) {
      const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [xs[i], xs[i + 1], ys[j], ys[j + 1]];
      if (boxes.some((b) => b.x <= x0 && x1 <= b.x + b.w && b.y <= y0 && y1 <= b.y + b.d)) sum += (x1 - x0) * (y1 - y0);
    }
  }
  return sum;
}

describe('areas that are added one after the other', () => {
  it('sum to the union, as counted cell by cell', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 9 }), (boxes) => {
        const rings = boxes.map((b) => rect(b.x, b.y, b.w, b.d));
        const plain = rect(0, 0, 6000, 5000);
        const added = addedAreas(
          rings,
          plain,
          rings.map((r) => areaWithin(r, plain)),
        );
        expect(added.reduce((a, b) => a + b, 0)).toBeCloseTo(byCells(boxes), 2);
        expect(Math.min(0, ...added)).toBe(0);
      }),
      { numRuns: 300, seed: 7 },
    );
  });
  it('sum to the union, turned every way', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ at: box, angle: fc.integer({ min: 0, max: 359 }) }), { minLength: 1, maxLength: 8 }), (list) => {
        const rings = list.map(({ at, angle }) =>
          rect(-at.w / 2, -at.d / 2, at.w, at.d).map((p) => ({ x: turn(p, angle).x + at.x, y: turn(p, angle).y + at.y })),
        );
        const added = addedAreas(
          rings,
          corner,
          rings.map((r) => areaWithin(r, corner)),
        );
        // Corners are kept to a thousandth of a mm: some mm² on rings metres long.
        expect(Math.abs(added.reduce((a, b) => a + b, 0) - coveredArea(rings, corner))).toBeLessThan(60);
      }),
      { numRuns: 300, seed: 8 },
    );
  });
});
