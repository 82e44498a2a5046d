import { describe, expect, it } from 'vitest';
import { packRefill, type RefillTask } from '#model/geometry/packingRefill.ts';
import { edges, type Polygon } from '#model/geometry/polygon.ts';
import { rectangle, type Tile, type TilePlace, tileRing } from '#model/geometry/tile.ts';
import { add, turn } from '#model/geometry/vec.ts';
import { distanceOutside } from '#model/geometry/withinRing.ts';
import { areApart } from '#tests/support/matChecker.ts';

// No published figure: counts that follow from arithmetic, and the checker of layings, which shares no code with the packing.

const tile: Tile = { width: 1200, depth: 750, gap: 300 };
const box = (width: number, depth: number): Polygon => rectangle(width, depth).map((p) => add(p, { x: width / 2, y: depth / 2 }));
const taskOf = (outline: Polygon, more: Partial<RefillTask> = {}): RefillTask => ({
  floor: { outline, obstacles: edges(outline).map(({ a, b }) => [a, b]) },
  tile,
  turns: [0],
  most: 99,
  isAllowed: () => true,
  questions: 3000,
  seed: 3,
  start: [],
  ...more,
});
function laid(task: RefillTask): readonly TilePlace[] {
  const work = packRefill(task);
  for (let step = work.next(); ; step = work.next()) if (step.done) return step.value;
}
function expectToHold(places: readonly TilePlace[], outline: Polygon): void {
  const mats = places.map((place) => ({ x: place.x, y: place.y, rotation: place.turn, width: tile.width, depth: tile.depth }));
  for (const [i, mat] of mats.entries()) {
    for (const p of tileRing(tile, places[i] as TilePlace)) expect(distanceOutside(outline, p)).toBeLessThan(1e-6);
    for (const other of mats.slice(0, i)) expect(areApart(mat, other, tile.gap)).toBe(true);
  }
}

describe('filling part by part', () => {
  it('fills rows to the mm, on a raster across them', () => {
    // n mats of 1200 in a row with gaps of 300 take n x 1500 - 300; of 750, n x 1050 - 300, here with a step of the raster to spare.
    const outline = box(3 * 1500 - 300, 2 * 1050 - 150);
    const places = laid(taskOf(outline));
    expect(places).toHaveLength(6);
    expectToHold(places, outline);
  });

  it('mixes both ways, and lies in the floor, apart, at turned walls too', () => {
    // 2850 wide: two across or three upright in a row; 2250 deep: one row of each; and a step of the raster to spare.
    expect(laid(taskOf(box(3000, 2400)))).toHaveLength(5);
    const turned = box(4200, 1950).map((p) => turn(p, 25));
    const places = laid(taskOf(turned, { turns: [0, 25] }));
    expect(places).toHaveLength(6);
    expectToHold(places, turned);
  });

  it('keeps to what is allowed and to its questions, and never has fewer than it began with', () => {
    let asked = 0;
    const isAllowed = (places: readonly TilePlace[]): boolean => {
      asked++;
      return places.every(({ x }) => x > 3000);
    };
    const outline = box(6000, 5000);
    const start = [{ x: 3700, y: 800, turn: 0 }];
    const places = laid(taskOf(outline, { isAllowed, questions: 3500, start }));
    expect(asked).toBeLessThanOrEqual(3500);
    expect(places.length).toBeGreaterThan(3);
    expect(isAllowed(places)).toBe(true);
    expectToHold(places, outline);
    expect(laid(taskOf(outline, { questions: 0, start }))).toEqual(start);
  });

  it('tells what it has on the way, never less, the same each time', () => {
    const task = taskOf(box(6000, 5000), { questions: 3500, isAllowed: (places) => places.length <= 9 });
    const counts = [...packRefill(task)].map((places) => places.length);
    expect(counts).toEqual([...counts].sort((p, q) => p - q));
    expect(counts.at(-1)).toBe(9);
    expect(laid(task)).toEqual(laid(task));
  });
});
