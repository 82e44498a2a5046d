import { differenceD, FillRule, intersectD, unionD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { convexHull } from '#model/geometry/convexParts.ts';
import { isConvex, type Polygon } from '#model/geometry/polygon.ts';
import { inside, type Region, regionArea, united, within } from '#model/geometry/region.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';

/** What is reckoned in groups that cannot meet, against the general-purpose library asked about everything at once. */
const HALL: Polygon = [
  { x: 0, y: 0 },
  { x: 9000, y: 0 },
  { x: 9000, y: 4000 },
  { x: 5000, y: 4000 },
  { x: 5000, y: 8000 },
  { x: 0, y: 8000 },
];

function scattered(seed: number, count: number, size: number): Polygon[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => {
    const [x, y] = [9000 * random(), 8000 * random()];
    return convexHull(Array.from({ length: 6 }, () => ({ x: x + size * random(), y: y + size * random() })));
  });
}

const asPaths = (region: Region) => region.map((ring) => ring.map(({ x, y }) => ({ x, y })));

describe.each([300, 1200, 4000])('rings of up to %i mm', (size) => {
  it.each(Array.from({ length: 8 }, (_, seed) => seed))('are united, shared and kept off as all at once (seed %i)', (seed) => {
    const [first, second, third] = [0, 100, 200].map((more) => scattered(seed + more, 25, size));
    const all = unionD(asPaths(first as Polygon[]), [], FillRule.NonZero, 3);
    expect(regionArea(united(first as Polygon[]))).toBeCloseTo(regionArea(all), -2);
    const both = intersectD(all, asPaths(second as Polygon[]), FillRule.NonZero, 3);
    expect(regionArea(inside(united(first as Polygon[]), second as Polygon[]))).toBeCloseTo(regionArea(both), -2);
    const kept = differenceD(intersectD(both, asPaths([HALL]), FillRule.NonZero, 3), asPaths(third as Polygon[]), FillRule.NonZero, 3);
    const ours = within(inside(united(first as Polygon[]), second as Polygon[]), HALL, third as Polygon[]);
    expect(regionArea(ours)).toBeCloseTo(regionArea(kept), -2);
  });
});

it('a star drawn in one line is not convex, though it turns one way; its hull is', () => {
  const star = [0, 2, 4, 1, 3].map((k) => ({ x: 1000 * Math.cos((k * 2 * Math.PI) / 5), y: 1000 * Math.sin((k * 2 * Math.PI) / 5) }));
  expect(isConvex(star)).toBe(false);
  expect(isConvex(convexHull(star))).toBe(true);
});
