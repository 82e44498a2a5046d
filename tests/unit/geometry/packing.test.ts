import { describe, expect, it } from 'vitest';
import { clearanceGrid, gridPoint } from '#model/geometry/clearanceGrid.ts';
import { corridorCost, coverableGrid } from '#model/geometry/corridorCost.ts';
import { type CorridorEnd, corridorRings, planCorridors } from '#model/geometry/corridors.ts';
import { packingBound } from '#model/geometry/packingBound.ts';
import { packRows } from '#model/geometry/packingRows.ts';
import { packSearch } from '#model/geometry/packingSearch.ts';
import { type PackingFloor, PackingSpace } from '#model/geometry/packingSpace.ts';
import { contains, edges, type Polygon } from '#model/geometry/polygon.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { rectangle, type Tile, type TilePlace, tileRing } from '#model/geometry/tile.ts';
import { add, distance, turn } from '#model/geometry/vec.ts';
import { distanceOutside } from '#model/geometry/withinRing.ts';

const tile: Tile = { width: 1200, depth: 750, gap: 300 };
const box = (width: number, depth: number): Polygon => rectangle(width, depth).map((p) => add(p, { x: width / 2, y: depth / 2 }));
const floorOf = (outline: Polygon, ...obstacles: Polygon[]): PackingFloor => ({
  outline,
  obstacles: [...edges(outline).map(({ a, b }) => [a, b]), ...obstacles],
});
const ell: Polygon = [
  { x: 0, y: 0 },
  { x: 5000, y: 0 },
  { x: 5000, y: 1000 },
  { x: 1400, y: 1000 },
  { x: 1400, y: 4000 },
  { x: 0, y: 4000 },
];

describe('a row', () => {
  it('takes as many as fit to the mm', () => {
    const space = new PackingSpace(floorOf(box(4200, 1000)), tile, 0);
    const us: number[] = [];
    expect(space.row(0, 500, us)).toBe(3);
    expect(us).toEqual([600, 2100, 3600]);
    expect(new PackingSpace(floorOf(box(4199.9, 1000)), tile, 0).row(0, 500)).toBe(2);
  });
  it('keeps the gap from tiles and none from what stands', () => {
    const post = rectangle(100, 1000).map((p) => add(p, { x: 1250, y: 500 }));
    const space = new PackingSpace(floorOf(box(4200, 1000), post), tile, 0);
    const us: number[] = [];
    space.row(0, 500, us);
    // 600 touches the post at 1200; the next comes 1500 on, beyond what the post asks.
    expect(us).toEqual([600, 2100, 3600]);
    space.blockTile({ x: 2100, y: 500, turn: 0 });
    us.length = 0;
    space.row(0, 500, us);
    expect(us).toEqual([600, 3600]);
  });
  it('does not reach across a line, nor through the notch of an L', () => {
    const line = [
      { x: 2000, y: 0 },
      { x: 2000, y: 1000 },
    ];
    expect(new PackingSpace(floorOf(box(2500, 1000), line), tile, 0).free(0, 500)).toEqual([600, 1400]);
    expect(new PackingSpace(floorOf(ell), tile, 0).free(0, 2000)).toEqual([600, 800]);
  });
  it('comes out the same in a turned frame', () => {
    const turned = box(4200, 1800).map((p) => turn(p, 25));
    const space = new PackingSpace(floorOf(turned), tile, 25);
    expect(packRows(space)).toHaveLength(6);
    for (const place of packRows(space)) {
      expect(place.turn % 90).toBeCloseTo(25, 9);
      for (const p of tileRing(tile, place)) expect(distanceOutside(turned, p)).toBeLessThan(1e-6);
    }
  });
  it('looks only round a place when asked to', () => {
    const space = new PackingSpace(floorOf(box(9000, 1000)), tile, 0).around({ x: 4500, y: 500 }, 1000);
    const [from, to] = space.free(0, 500);
    expect([from, to]).toEqual([3500, 5500]);
    expect(space.free(0, 1600)).toEqual([]);
  });
});

describe('rows', () => {
  it('stack both ways where that gives more', () => {
    // 2850 wide: two across or three upright in a row; 2250 deep: one row of each.
    const places = packRows(new PackingSpace(floorOf(box(2850, 2250)), tile, 0));
    expect(places).toHaveLength(5);
  });
});

describe('the search', () => {
  const task = {
    floor: floorOf(box(6000, 5000)),
    tile,
    turns: [0],
    most: 99,
    lanes: () => [],
    guesses: 2,
    questions: 60,
    rounds: 90,
    seed: 4,
  };
  const where = (isAllowed: (places: readonly TilePlace[]) => boolean) => (places: readonly TilePlace[]) => (isAllowed(places) ? null : []);
  it('gives the same places each time', () => {
    const ask = () => packSearch({ ...task, inTheWay: where((places) => places.length <= 5) });
    expect(ask()).toEqual(ask());
  });
  it('lays only what is allowed, down to none', () => {
    const right = packSearch({ ...task, inTheWay: where((places) => places.every((p) => p.x > 3000)) });
    expect(right.length).toBeGreaterThan(3);
    expect(right.every((p) => p.x > 3000)).toBe(true);
    expect(packSearch({ ...task, inTheWay: where((places) => places.length === 0) })).toEqual([]);
  });
  it('asks no more often than it may', () => {
    let asked = 0;
    packSearch({
      ...task,
      questions: 25,
      inTheWay: where((places) => {
        asked++;
        return places.length < 4;
      }),
    });
    expect(asked).toBeLessThanOrEqual(25);
    expect(asked).toBeGreaterThan(5);
  });
  it('takes out what is said to be in the way, and no more than has to be', () => {
    // Rows lay them everywhere; those of the left third are named, one question each.
    let asked = 0;
    const inTheWay = (places: readonly TilePlace[]): readonly number[] | null => {
      asked++;
      const wrong = places.flatMap((p, k) => (p.x < 2000 ? [k] : []));
      return wrong.length === 0 ? null : wrong;
    };
    const all = packSearch({ ...task, rounds: 0, inTheWay: () => null });
    const left = packSearch({ ...task, rounds: 0, inTheWay });
    expect(left).toEqual(all.filter((p) => p.x >= 2000));
    expect(left.length).toBeLessThan(all.length);
    expect(asked).toBeLessThanOrEqual(3 * (all.length - left.length) + 1);
  });
  it('puts back what was taken out in vain', () => {
    // The first that is named stands in nobody's way; the second does.
    const inTheWay = (places: readonly TilePlace[]): readonly number[] | null => {
      const wrong = places.findIndex((p) => p.x < 1000 && p.y < 1000);
      return wrong < 0 ? null : [places.findIndex((p) => p.x > 3000), wrong].filter((k) => k >= 0);
    };
    const all = packSearch({ ...task, rounds: 0, inTheWay: () => null });
    expect(packSearch({ ...task, rounds: 0, inTheWay })).toHaveLength(all.length - 1);
  });
  it('ends when the time is over, with what it has by then', () => {
    let asked = 0;
    const inTheWay = where((places) => {
      asked++;
      return places.length < 4;
    });
    const cut = packSearch({ ...task, questions: 400, rounds: 600, inTheWay, isOver: () => asked >= 8 });
    // A first laying that is being mended is mended to its end.
    expect(asked).toBeLessThan(60);
    expect(cut.length).toBeLessThan(4);
    asked = 0;
    expect(packSearch({ ...task, inTheWay, isOver: () => true })).toEqual([]);
    expect(asked).toBe(0);
  });
  it('stops at what is known to be most', () => {
    expect(packSearch({ ...task, most: 7, inTheWay: () => null })).toHaveLength(7);
  });
});

describe('the bound', () => {
  it('is the covered area over one grown tile, found by counting points', () => {
    const random = seededRandom(31);
    for (let n = 0; n < 12; n++) {
      const post = rectangle(300 + 900 * random(), 300 + 600 * random()).map((p) =>
        add(turn(p, 90 * random()), { x: 1000 + 3000 * random(), y: 1000 + 2000 * random() }),
      );
      const floor = floorOf(box(5000, 4000), post);
      const bound = packingBound(floor, tile, [0]);
      // Every point of a lattice of 100 mm that some grown tile with its middle on a lattice of 50 mm covers.
      const covered = new Set<string>();
      for (const way of [0, 1] as const) {
        const space = new PackingSpace(floor, tile, 0);
        const [w, d] = way === 0 ? [750, 525] : [525, 750];
        for (let v = 0; v <= 4000; v += 50)
          for (let u = 0; u <= 5000; u += 50) {
            const spans = space.free(way, v);
            let isFree = false;
            for (let i = 0; i < spans.length; i += 2) isFree ||= u >= (spans[i] as number) && u <= (spans[i + 1] as number);
            if (!isFree) continue;
            for (let x = Math.ceil((u - w) / 100) * 100; x <= u + w; x += 100)
              for (let y = Math.ceil((v - d) / 100) * 100; y <= v + d; y += 100) covered.add(`${x},${y}`);
          }
      }
      const counted = (covered.size * 100 * 100) / (1500 * 1050);
      expect(bound).toBeGreaterThanOrEqual(Math.floor(counted * 0.94));
      expect(bound).toBeLessThanOrEqual(Math.ceil(counted * 1.02));
    }
  });
  it('takes every turn together: a floor for one turn only is no less for two', () => {
    const floor = floorOf(box(1250, 800));
    expect(packingBound(floor, tile, [0])).toBe(1);
    expect(packingBound(floor, tile, [45])).toBe(0);
    expect(packingBound(floor, tile, [0, 45])).toBe(1);
  });
});

describe('corridors', () => {
  const outline = box(6000, 4000);
  const walls = edges(outline).map(({ a, b }) => [a, b]);
  const wall = (x: number): CorridorEnd['lines'][number] => ({
    a: { x: x - 450, y: 0 },
    b: { x: x + 450, y: 0 },
    outward: { x: 0, y: 1 },
  });
  const shelf = { a: { x: 4000, y: 4000 }, b: { x: 5000, y: 4000 }, outward: { x: 0, y: -1 } };
  const ends: CorridorEnd[] = [
    { lines: [wall(1000)], width: 900, isSource: true },
    { lines: [shelf], width: 900, isSource: false },
  ];
  const grid = clearanceGrid(outline, walls, 0, 450, 100, 30_000);
  it('the lattice knows how far each point is from what stands', () => {
    for (let at = 0; at < grid.clear.length; at += 37) {
      const p = gridPoint(grid, at);
      const away = Math.min(p.x, 6000 - p.x, p.y, 4000 - p.y);
      expect(grid.clear[at]).toBeCloseTo(Math.min(450, away), 6);
    }
  });
  it('join a front to a door, wide enough all along', () => {
    const [corridor, ...more] = planCorridors(grid, new Uint8Array(grid.clear.length), ends);
    expect(more).toEqual([]);
    const path = corridor?.path ?? [];
    expect(path.every(({ diameter }) => diameter >= 900)).toBe(true);
    const tips = [path[0]?.at, path[path.length - 1]?.at];
    expect(Math.min(...tips.map((p) => Math.abs((p?.y ?? 0) - 3550)))).toBeLessThan(100);
    expect(Math.min(...tips.map((p) => distance(p ?? { x: 0, y: 0 }, { x: 1000, y: 450 })))).toBeLessThan(600);
    for (const { at } of path) expect(corridorRings({ path }, 0).some((ring) => contains(ring, at))).toBe(true);
  });
  it('go round floor that costs much', () => {
    const cost = new Uint8Array(grid.clear.length);
    for (let at = 0; at < cost.length; at++) {
      const p = gridPoint(grid, at);
      if (p.y > 1200 && p.x < 5000) cost[at] = 20;
    }
    const [corridor] = planCorridors(grid, cost, ends);
    expect(Math.max(...(corridor?.path ?? []).map(({ at }) => at.x))).toBeGreaterThan(4900);
  });
  it('say nothing of a front that cannot be reached', () => {
    const shut = clearanceGrid(outline, [...walls, rectangle(100, 4000).map((p) => add(p, { x: 3000, y: 2000 }))], 0, 450, 100, 30_000);
    expect(planCorridors(shut, new Uint8Array(shut.clear.length), ends)).toEqual([]);
  });
  it('cost what tiles could cover', () => {
    const space = new PackingSpace(
      floorOf(
        outline,
        rectangle(2000, 4000).map((p) => add(p, { x: 5000, y: 2000 })),
      ),
      tile,
      0,
    );
    const covered = coverableGrid(space, grid);
    const at = (x: number, y: number) => Math.round((y - grid.minV) / 100) * grid.columns + Math.round((x - grid.minU) / 100);
    expect(covered[at(2000, 2000)]).toBe(1);
    expect(covered[at(5000, 2000)]).toBe(0);
    const cost = corridorCost(covered, grid, 900, null);
    expect(cost[at(2000, 2000)]).toBe(20);
    expect(cost[at(5500, 2000)]).toBe(0);
  });
});
