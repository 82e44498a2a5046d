import { describe, expect, it } from 'vitest';
import { type Closest, closestOfParts } from '#model/geometry/closest.ts';
import { findGaps } from '#model/geometry/gaps.ts';
import { MinHeap } from '#model/geometry/minHeap.ts';
import { ParityForest } from '#model/geometry/parityForest.ts';
import { PartGrid } from '#model/geometry/partGrid.ts';
import { distanceToPart, isConvexRing, isInPart, makePart, partsOf } from '#model/geometry/parts.ts';
import type { Polygon } from '#model/geometry/polygon.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { separate } from '#model/geometry/separation.ts';
import { freeStretches, largestDiscs, viewFront } from '#model/geometry/tangentDiscs.ts';
import { turn } from '#model/geometry/vec.ts';

const box = (x: number, y: number, w: number, d: number): Polygon => [
  { x, y },
  { x: x + w, y },
  { x: x + w, y: y + d },
  { x, y: y + d },
];
const part = (ring: Polygon, id = 'p') => makePart(id, ring);
const closest = (p: Polygon, q: Polygon): Closest => {
  const out = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  closestOfParts(part(p), part(q), out);
  return out;
};

describe('closest pair of two parts', () => {
  it('stands in the middle where two faces run parallel', () => {
    const found = closest(box(0, 0, 1000, 300), box(400, 1100, 1000, 300));
    expect(found).toEqual({ distance: 800, ax: 700, ay: 300, bx: 700, by: 1100 });
  });
  it('does so for turned faces too', () => {
    const turned = (ring: Polygon): Polygon => ring.map((p) => turn(p, 33.3));
    const found = closest(turned(box(0, 0, 1000, 300)), turned(box(400, 1100, 1000, 300)));
    const middle = turn({ x: 700, y: 700 }, 33.3);
    expect(found.distance).toBeCloseTo(800, 9);
    expect((found.ax + found.bx) / 2).toBeCloseTo(middle.x, 6);
    expect((found.ay + found.by) / 2).toBeCloseTo(middle.y, 6);
  });
  it('runs from corner to corner past each other', () => {
    expect(closest(box(0, 0, 100, 100), box(400, 500, 100, 100)).distance).toBe(500);
  });
  it.each([
    ['crossing', box(0, 0, 100, 100), box(50, 50, 100, 100)],
    ['touching', box(0, 0, 100, 100), box(100, 20, 100, 100)],
    ['one within the other', box(0, 0, 100, 100), box(40, 40, 10, 10)],
    [
      'crossing segments',
      [
        { x: 0, y: 0 },
        { x: 9, y: 9 },
      ],
      [
        { x: 0, y: 9 },
        { x: 9, y: 0 },
      ],
    ],
    [
      'segments on one line that lap',
      [
        { x: 0, y: 0 },
        { x: 9, y: 3 },
      ],
      [
        { x: 6, y: 2 },
        { x: 12, y: 4 },
      ],
    ],
  ] as [string, Polygon, Polygon][])('is 0 when %s', (_, p, q) => {
    expect(closest(p, q).distance).toBeCloseTo(0, 12);
  });
});

describe('parts', () => {
  const notched: Polygon = [...box(0, 0, 100, 100).slice(0, 3), { x: 50, y: 50 }, { x: 0, y: 100 }];
  it('keeps a convex piece whole and takes a concave one by its edges', () => {
    expect(partsOf('a', box(0, 0, 5, 5))).toHaveLength(1);
    expect(partsOf('a', notched)).toHaveLength(5);
  });
  it('does not take a star for convex, though its corners all turn one way', () => {
    const star = [0, 2, 4, 1, 3].map((k) => turn({ x: 0, y: -100 }, 72 * k));
    expect(isConvexRing(star)).toBe(false);
    expect(isConvexRing([...box(0, 0, 5, 5)].reverse())).toBe(true);
  });
  it('knows inside from outside', () => {
    const one = part(box(0, 0, 100, 100));
    expect([isInPart(one, 50, 50), isInPart(one, 150, 50), distanceToPart(one, 103, 104), distanceToPart(one, 1, 1)]).toEqual([
      true,
      false,
      5,
      0,
    ]);
  });
  it('finds neighbours by place, as looking at all does', () => {
    const random = seededRandom(5);
    const many = Array.from({ length: 150 }, () => part(box(20_000 * random(), 20_000 * random(), 2000 * random(), 900 * random())));
    const gaps = (reach: number) =>
      findGaps(many, reach)
        .map((g) => `${g.i}-${g.j}`)
        .sort();
    const all: string[] = [];
    for (const [i, p] of many.entries())
      for (const [k, q] of many.slice(i + 1).entries()) if (closest(p.ring, q.ring).distance < 915) all.push(`${i}-${i + 1 + k}`);
    expect(gaps(915)).toEqual(all.sort());
    const grid = new PartGrid(many, new PartGrid(many.slice(0, 70)));
    const asked = { minX: 4000, minY: 4000, maxX: 9000, maxY: 9000 };
    expect(grid.near(asked, 10)).toEqual(new PartGrid(many).near(asked, 10));
  });
});

describe('loops of gaps', () => {
  it('cuts a point off when the ring of parts round it closes, and not before', () => {
    // Four bars round the middle; the widest of the four corner gaps is the way out.
    const bars = [box(-500, -600, 1000, 10), box(-500, 590, 1000, 10), box(-600, -500, 10, 1000), box(590, -500, 10, 1000)];
    const room = box(-2000, -2000, 4000, 4000);
    const walls = room.map((a, i) => part([a, room[(i + 1) % 4] as (typeof room)[number]], 'w'));
    const parts = [...bars.map((b) => part(b)), ...walls];
    const gaps = findGaps(parts, 5000).sort((p, q) => p.width - q.width);
    const [cut] = separate(
      parts,
      gaps,
      [
        { x: 1500, y: 1500 },
        { x: 0, y: 0 },
        { x: 1500, y: -1500 },
      ],
      [0],
    );
    expect(cut?.[1]?.width).toBeCloseTo(Math.hypot(90, 90), 6);
    expect(cut?.[2]?.width).toBeCloseTo(1400, 6);
  });
  it('tells apart what a loop goes round', () => {
    const forest = new ParityForest(3, [
      { x: 1, y: 1 },
      { x: 9, y: 9 },
    ]);
    const link = (i: number, j: number, ...path: [number, number, number, number]): boolean => {
      forest.startLink();
      forest.addPath(...path);
      return forest.closeLoop(i, j);
    };
    expect(link(0, 1, 0, 0, 4, 0)).toBe(false);
    expect(link(1, 2, 4, 0, 0, 4)).toBe(false);
    expect(link(2, 0, 0, 4, 0, 0)).toBe(true);
    expect(forest.loop[0]).toBe(1);
  });
});

describe('discs that touch a front', () => {
  const front = { a: { x: 0, y: 0 }, b: { x: 1200, y: 0 }, outward: { x: 0, y: 1 } };
  const look = (...rings: Polygon[]) =>
    viewFront(
      front,
      rings.map((r) => part(r)),
      5000,
      () => true,
    );
  it('finds the summit between two corners', () => {
    // The disc in the middle meets the far corners, (0, 200) and (1200, 200): diameter (600² + 200²) / 200.
    const [disc, ...others] = largestDiscs(look(box(-500, 100, 500, 100), box(1200, 100, 500, 100)));
    expect(others).toEqual([]);
    expect(disc?.u).toBeCloseTo(600, 2);
    expect(disc?.diameter).toBeCloseTo(2000, 2);
  });
  it('finds a place narrower than any step along the front', () => {
    // Two pieces 500 before the front leave 200 between them.
    const discs = largestDiscs(look(box(-2000, 500, 2500, 100), box(700, 500, 2500, 100)));
    const best = Math.max(...discs.map((d) => d.diameter));
    expect(best).toBeCloseTo((100 ** 2 + 500 ** 2) / 500, 3);
  });
  it('is held by a face that leans', () => {
    // A wall from (1200, 0) at 45 degrees: r = (1200 - u) sin 45 / (1 + cos 45), largest at the far end.
    const [disc] = largestDiscs(
      look([
        { x: 1200, y: 0 },
        { x: -3800, y: 5000 },
      ]),
    );
    expect(disc?.u).toBeCloseTo(0, 3);
    expect(disc?.diameter).toBeCloseTo((2 * 1200 * Math.SQRT1_2) / (1 + Math.SQRT1_2), 3);
  });
  it('says along which stretches a disc of one size fits', () => {
    const free = freeStretches(look(box(400, 300, 400, 100)), 600);
    const half = Math.sqrt(300 * 300);
    expect(free.map(([from, to]) => [Math.round(from * 100) / 100, Math.round(to * 100) / 100])).toEqual([
      [0, 400 - half],
      [800 + half, 1200],
    ]);
  });
  it('has none where a piece lies over the front', () => {
    expect(largestDiscs(look(box(-100, -100, 1400, 300)))).toEqual([]);
  });
});

describe('heap', () => {
  it('gives the least first', () => {
    const heap = new MinHeap<number>();
    const random = seededRandom(3);
    const values = Array.from({ length: 500 }, () => Math.floor(1000 * random()));
    for (const value of values) heap.push(value, value);
    const out: number[] = [];
    for (let top = heap.pop(); top; top = heap.pop()) out.push(top.value);
    expect(out).toEqual(values.sort((p, q) => p - q));
  });
});
