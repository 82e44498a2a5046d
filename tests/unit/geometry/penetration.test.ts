import { areaD, differenceD, FillRule, intersectD, minkowskiSumD, type PathD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { eachBoxPair } from '#model/geometry/boxPairs.ts';
import { convexHull, convexParts } from '#model/geometry/convexParts.ts';
import { convexSum, mirrored } from '#model/geometry/convexSum.ts';
import { forbiddenShifts, penetration, waysOut } from '#model/geometry/penetration.ts';
import { area, boundingBox, clockwise, isConvex, isSimple, type Polygon } from '#model/geometry/polygon.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { add, type Point, turn } from '#model/geometry/vec.ts';

const box = (x: number, y: number, w: number, d: number, degrees = 0): Polygon =>
  [
    { x: -w / 2, y: -d / 2 },
    { x: w / 2, y: -d / 2 },
    { x: w / 2, y: d / 2 },
    { x: -w / 2, y: d / 2 },
  ].map((p) => add({ x, y }, turn(p, degrees)));
const ell: Polygon = [
  { x: 0, y: 0 },
  { x: 1000, y: 0 },
  { x: 1000, y: 300 },
  { x: 300, y: 300 },
  { x: 300, y: 1000 },
  { x: 0, y: 1000 },
];
const moved = (ring: Polygon, by: Point): Polygon => ring.map((p) => add(p, by));
const star = (random: () => number, corners: number): Polygon =>
  clockwise(
    Array.from({ length: corners }, (_, i) => {
      const r = 200 + 800 * random();
      const t = (2 * Math.PI * (i + 0.8 * random())) / corners;
      return { x: r * Math.cos(t), y: r * Math.sin(t) };
    }),
  );
const path = (ring: Polygon): PathD => ring.map(({ x, y }) => ({ x, y }));
const firstOut = (a: readonly Polygon[], b: readonly Polygon[]): Point => {
  for (const out of waysOut(forbiddenShifts(a, b))) return out;
  throw new Error('there is always a way out');
};
const sharedArea = (a: Polygon, b: Polygon): number =>
  Math.abs(intersectD([path(a)], [path(b)], FillRule.NonZero, 5).reduce((sum, p) => sum + areaD(p), 0));

describe('convex parts', () => {
  it('of 200 random stars are convex and make up the whole', () => {
    const random = seededRandom(11);
    for (let n = 0; n < 200; n++) {
      const ring = star(random, 5 + Math.floor(random() * 20));
      expect(isSimple(ring)).toBe(true);
      const parts = convexParts(ring);
      expect(parts.every((part) => isConvex(part))).toBe(true);
      expect(parts.reduce((sum, part) => sum + area(part), 0)).toBeCloseTo(area(ring), 3);
      const left = differenceD([path(ring)], parts.map(path), FillRule.NonZero, 5);
      expect(Math.abs(left.reduce((sum, p) => sum + areaD(p), 0))).toBeLessThan(1);
    }
  });
  it('of an L are two', () => expect(convexParts(ell)).toHaveLength(2));
  it('of a ring that crosses itself are its hull', () => {
    const [a, b, c, d] = box(0, 0, 10, 10) as [Point, Point, Point, Point];
    const bow = [a, c, b, d, { x: 0, y: 20 }];
    expect(convexParts(bow)).toEqual([convexHull(bow)]);
  });
});

describe('convex sum', () => {
  it('is the Minkowski sum of a general library, also for segments (400 random pairs)', () => {
    const random = seededRandom(5);
    for (let n = 0; n < 400; n++) {
      const points = (k: number) => Array.from({ length: k }, () => ({ x: random() * 1000, y: random() * 1000 }));
      const a = convexHull(points(4 + (n % 7)));
      const b = n % 3 === 0 ? points(2) : convexHull(points(4));
      const sum = convexSum(a, b);
      const hull = convexHull(a.flatMap((p) => b.map((q) => add(p, q))));
      expect(area(sum)).toBeCloseTo(area(hull), 3);
      // The library rounds to 0.01 mm here: at most that times the outline.
      if (b.length > 2) expect(Math.abs(area(sum) - libraryArea(a, b))).toBeLessThan(60);
    }
  });
  const libraryArea = (a: Polygon, b: Polygon): number => {
    const rings = minkowskiSumD(path(a), path(b), true);
    return Math.max(...rings.map((ring) => Math.abs(areaD(ring))));
  };
});

describe('penetration', () => {
  it('of two boxes is the smaller overlap of their sides', () => {
    expect(penetration([box(0, 0, 400, 300)], [box(350, 10, 400, 300)])).toBeCloseTo(50, 9);
    expect(penetration([box(0, 0, 400, 300)], [box(400, 0, 400, 300)])).toBeCloseTo(0, 9);
    expect(penetration([box(0, 0, 400, 300)], [box(700, 0, 400, 300)])).toBe(0);
  });
  it('of a box within a box is the way out, not the size', () => {
    expect(penetration([box(0, 0, 1000, 1000)], [box(100, 0, 200, 200)])).toBeCloseTo(500, 9);
  });
  it('of a turned box counts along its own sides', () => {
    // A square of 1000 on its corner reaches 707.11 right; the face of the other stands at 650.
    expect(penetration([box(0, 0, 1000, 1000, 45)], [box(1150, 0, 1000, 4000)])).toBeCloseTo(1000 * Math.SQRT1_2 - 650, 6);
  });
  it('leaves a box in the notch of an L alone', () => {
    expect(penetration(convexParts(ell), [box(650, 650, 600, 600)])).toBe(0);
    expect(penetration(convexParts(ell), [box(635, 650, 690, 600)])).toBeCloseTo(10, 6);
  });
  it('of a box across both arms of an L is shorter out through the notch than off both arms', () => {
    // The box reaches 100 into each arm: the way out is the diagonal into the notch.
    expect(penetration([box(500, 500, 600, 600)], convexParts(ell))).toBeCloseTo(Math.hypot(100, 100), 6);
  });
  it('is the least shift that frees two random stars, neither too short nor too long (150 pairs)', () => {
    const random = seededRandom(23);
    for (let n = 0; n < 150; n++) {
      const a = star(random, 5 + (n % 4));
      const b = moved(star(random, 5 + (n % 3)), { x: 500 * random(), y: 1500 * random() });
      const partsA = convexParts(a);
      const partsB = convexParts(b);
      const depth = penetration(partsA, partsB);
      const shared = sharedArea(a, b);
      expect(depth > 0.01).toBe(shared > 0.01);
      if (depth === 0) continue;
      const out = firstOut(partsA, partsB);
      expect(sharedArea(moved(a, out), b)).toBeLessThan(1);
      for (let k = 0; k < 36; k++) {
        const shorter = turn({ x: depth - 0.5, y: 0 }, k * 10);
        expect(sharedArea(moved(a, shorter), b)).toBeGreaterThan(1e-3);
      }
    }
  });
  it('takes the hulls of shapes with many parts: never too little', () => {
    const random = seededRandom(3);
    const many = convexParts(star(random, 60));
    expect(many.length).toBeGreaterThan(8);
    const other = convexParts(moved(star(random, 60), { x: 300, y: 0 }));
    const out = firstOut(many, other);
    expect(
      penetration(
        many.map((p) => moved(p, out)),
        other,
      ),
    ).toBeCloseTo(0, 6);
  });
});

describe('box pairs', () => {
  it('are the pairs that comparing all with all finds', () => {
    const random = seededRandom(8);
    const boxes = Array.from({ length: 200 }, () => boundingBox(box(random() * 5000, random() * 5000, 300 * random(), 300 * random())));
    const found: string[] = [];
    eachBoxPair(boxes, (i, j) => found.push(`${i}-${j}`));
    const wanted: string[] = [];
    boxes.forEach((p, i) => {
      boxes.forEach((q, j) => {
        if (i < j && p.minX < q.maxX && q.minX < p.maxX && p.minY < q.maxY && q.minY < p.maxY) wanted.push(`${i}-${j}`);
      });
    });
    expect(found.sort()).toEqual(wanted.sort());
    expect(wanted.length).toBeGreaterThan(20);
  });
});

it('half a turn mirrors a ring about the origin', () => {
  expect(mirrored([{ x: 1, y: -2 }])).toEqual([{ x: -1, y: 2 }]);
});
