import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packingBound } from '#model/geometry/packingBound.ts';
import { add, turn } from '#model/geometry/vec.ts';
import { workDone } from '#model/geometry/workDone.ts';
import { matFloor, matTurns } from '#model/measures/floor.ts';
import { type Effort, measureMats, reportMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { wrongMats } from '#tests/support/matChecker.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { patience, runs } from '#tests/support/runs.ts';
import { seededRoom } from '#tests/support/seededRoom.ts';

// No published figure for the number of work mats a floor takes was found. What stands outside this project here: counts
// that follow from arithmetic alone, an exhaustive search on a lattice, and a checker that shares no code with the packing.

const roomsFolder = join(import.meta.dirname, '../bench/rooms');
const benchRoom = (name: string): Scene => {
  const read = readClassroom(JSON.parse(readFileSync(join(roomsFolder, name), 'utf8')));
  if (!read.ok) throw new Error(`${name} does not read`);
  return buildScene(read.classroom);
};
const sceneOf = (change: PlainRoomChange): Scene => buildScene(plainRoom(change));
const lay = (scene: Scene, effort: Effort) => {
  const mats = measureMats(scene, seatStrips(scene), effort);
  const report = reportMats(mats);
  if (!mats || !report) throw new Error('the walls hold');
  const exact = mats.places.map(({ x, y, turn: rotation }) => ({ x, y, rotation, width: mats.tile.width, depth: mats.tile.depth }));
  return { ...report, exact };
};
const boundOf = (scene: Scene): number => {
  const { mat, gap } = scene.classroom.floorWork;
  const turns = matTurns(scene, Math.min(mat.width, mat.depth));
  return packingBound(matFloor(scene, seatStrips(scene)), { ...mat, gap }, turns);
};
const corners = (...at: [number, number][]) => at.map(([x, y], i) => ({ id: `c${i + 1}`, x, y }));
const bare = (...at: [number, number][]): PlainRoomChange => ({ room: { corners: corners(...at), openings: [] } });
const box = (width: number, depth: number): PlainRoomChange => bare([0, 0], [width, 0], [width, depth], [0, depth]);

describe('rooms that can be counted by hand', () => {
  // n mats of 1200 in a row with gaps of 300 take n x 1500 - 300; of 750, n x 1050 - 300. Grown mats tile the whole.
  it.each([
    [1, 1],
    [3, 2],
    [2, 5],
    [4, 4],
  ])('%i by %i mats to the mm: exactly so many, and one millimetre less takes a row away', (across, down) => {
    const width = across * 1500 - 300;
    const depth = down * 1050 - 300;
    const full = lay(sceneOf(box(width, depth)), 'better');
    expect(full).toMatchObject({ count: across * down, upperBound: across * down, proven: true });
    const less = lay(sceneOf(box(width, depth - 1)), 'better');
    expect(less.count).toBeLessThan(across * down);
  });
  it('a passage as wide as a mat takes them one behind another', () => {
    // 6300 long: 1200 + 3 x 1500 = 5700 for four, 7200 for five.
    expect(lay(sceneOf(box(750, 6300)), 'better')).toMatchObject({ count: 4 });
    expect(lay(sceneOf(box(749, 6300)), 'better')).toMatchObject({ count: 0, upperBound: 0, proven: true });
  });
  it('two niches that each take one: the pieces of floor are rounded down each by itself', () => {
    // A wall of 100 between two niches of 1500 x 1000: each would take 1.3 mats by area.
    const scene = sceneOf({
      ...box(3100, 1000),
      pieces: [{ id: 'p1', kind: 'other', x: 1550, y: 500, width: 100, depth: 1000 }],
    });
    expect(lay(scene, 'better')).toMatchObject({ count: 2, proven: true });
  });
  it('a room turned by 30 degrees takes what it takes unturned', () => {
    const ring: [number, number][] = [
      [0, 0],
      [4200, 0],
      [4200, 1800],
      [0, 1800],
    ];
    const turned = ring.map(([x, y]): [number, number] => {
      const p = add({ x: 5000, y: 5000 }, turn({ x, y }, 30));
      return [p.x, p.y];
    });
    expect(lay(sceneOf(bare(...turned)), 'better')).toMatchObject({ count: 6, proven: true });
  });
  it('a strip before an open shelf is kept free, before a closed one it is not', () => {
    // Behind the strip of 600 lie 1800 of depth: two rows of two.
    const shelf = { id: 's1', kind: 'shelf', x: 1350, y: 150, width: 2700, depth: 300, for: 'adults' } as const;
    const open = sceneOf({ ...box(2700, 2700), pieces: [shelf] });
    const closed = sceneOf({ ...box(2700, 2700), pieces: [{ ...shelf, closed: true }] });
    expect(lay(open, 'better')).toMatchObject({ count: 4, proven: true });
    expect(lay(closed, 'better').upperBound).toBeGreaterThan(4);
  });
  it('ways are kept: in a passage of 1500 with a door at each end no mat can lie', () => {
    const scene = sceneOf({
      room: {
        corners: corners([0, 0], [1500, 0], [1500, 6000], [0, 6000]),
        openings: [
          { id: 'd1', kind: 'passage', from: 'c1', offset: 250, width: 1000 },
          { id: 'd2', kind: 'passage', from: 'c3', offset: 250, width: 1000 },
        ],
      },
    });
    // 1500 - 750 leaves 750 beside a mat, less than the 914.4 of the route.
    expect(lay(scene, 'better').count).toBe(0);
  });
});

describe('an exhaustive search on a lattice of 300 mm', () => {
  it.each([
    ['a bare room', box(3300, 2700)],
    [
      'a column in the middle',
      { ...box(3600, 3000), pieces: [{ id: 'p1', kind: 'other', x: 1800, y: 1500, width: 300, depth: 300 }] } as PlainRoomChange,
    ],
    ['an L', bare([0, 0], [3900, 0], [3900, 1500], [1500, 1500], [1500, 3300], [0, 3300])],
  ])('finds no more than the rows do in %s', (_, change) => {
    const scene = sceneOf(change);
    const found = lay(scene, 'better');
    expect(found.count).toBeGreaterThanOrEqual(latticeBest(scene));
    expect(found.upperBound).toBeGreaterThanOrEqual(found.count);
  });
});

/** The most mats with their middles on the lattice, in both ways, by branch and bound. No ways are asked. */
function latticeBest(scene: Scene): number {
  const { mat, gap } = scene.classroom.floorWork;
  const xs = scene.room.outline.map((p) => p.x);
  const ys = scene.room.outline.map((p) => p.y);
  const places: { x: number; y: number; w: number; d: number }[] = [];
  for (const [w, d, rotation] of [
    [mat.width, mat.depth, 0],
    [mat.depth, mat.width, 90],
  ] as const)
    for (let x = w / 2; x <= Math.max(...xs) - w / 2; x += 300)
      for (let y = d / 2; y <= Math.max(...ys) - d / 2; y += 300)
        if (wrongMats(scene, [{ x, y, width: mat.width, depth: mat.depth, rotation }]).length === 0) places.push({ x, y, w, d });
  const clash = (p: (typeof places)[number], q: (typeof places)[number]): boolean =>
    Math.abs(p.x - q.x) < (p.w + q.w) / 2 + gap && Math.abs(p.y - q.y) < (p.d + q.d) / 2 + gap;
  let best = 0;
  const grow = (open: typeof places, count: number): void => {
    best = Math.max(best, count);
    // A mat and all that clash with it: one of them lies in some best laying, so only those need be tried.
    const [first] = open;
    if (!first || count + open.length <= best) return;
    for (const pick of open.filter((p) => p === first || clash(p, first)))
      grow(
        open.filter((p) => !clash(p, pick)),
        count + 1,
      );
  };
  grow(places, 0);
  return best;
}

describe('the rooms for benchmarks', () => {
  const names = readdirSync(roomsFolder).filter((name) => /^room-\d+\.json$/.test(name));
  it('are twelve', () => expect(names).toHaveLength(12));
  it.each(names)('%s: every mat passes the checker, and no more lie than the bound allows', { timeout: 60_000 }, (name) => {
    const scene = benchRoom(name);
    const { count, upperBound, exact } = lay(scene, 'better');
    expect(wrongMats(scene, exact)).toEqual([]);
    expect(exact).toHaveLength(count);
    expect(boundOf(scene)).toBe(upperBound);
    expect(upperBound).toBeGreaterThanOrEqual(count);
  });
  it('the quick answer keeps the ways as well', { timeout: patience }, () => {
    for (const name of [...names, 'bench-60.json']) {
      const scene = benchRoom(name);
      expect(wrongMats(scene, lay(scene, 'quick').exact), name).toEqual([]);
    }
  });
  it('the quick answer finds most of what the longer search finds, with a small part of its work', { timeout: patience }, () => {
    const found = { quick: 0, better: 0 };
    // Work is counted, not timed: links between obstacles, of which loops round a way are made.
    const links = { quick: 0, better: 0 };
    for (const name of names.filter((_, k) => k % 3 === 0)) {
      const scene = benchRoom(name);
      for (const effort of ['quick', 'better'] as const) {
        const before = workDone.links;
        found[effort] += lay(scene, effort).count;
        links[effort] += workDone.links - before;
      }
    }
    expect(found.quick).toBeGreaterThan(0.66 * found.better);
    expect(links.quick).toBeLessThan(links.better / 15);
  });
});

describe('seeded rooms', () => {
  it('every mat passes the checker, and no more lie than the bound allows', { timeout: patience }, () => {
    for (let seed = 1; seed <= runs(50, 600); seed++) {
      const scene = sceneOf(seededRoom(seed));
      const { count, exact, upperBound } = lay(scene, 'quick');
      expect(wrongMats(scene, exact), `seed ${seed}`).toEqual([]);
      expect(upperBound, `seed ${seed}`).toBeGreaterThanOrEqual(count);
    }
  });
  it('more furniture never raises the bound', { timeout: patience }, () => {
    for (let seed = 1; seed <= runs(50, 600); seed++) {
      const change = seededRoom(seed);
      const pieces = change.pieces ?? [];
      const bounds = pieces.map((_, k) => boundOf(sceneOf({ ...change, pieces: pieces.slice(0, k) })));
      bounds.push(boundOf(sceneOf(change)));
      for (let k = 1; k < bounds.length; k++) expect(bounds[k], `seed ${seed}`).toBeLessThanOrEqual(bounds[k - 1] ?? Infinity);
    }
  });
  it('the bound stays when the room is mirrored, turned by a quarter, or moved', { timeout: patience }, () => {
    for (let seed = 1; seed <= runs(50, 600); seed++) {
      const change = seededRoom(seed);
      const bound = boundOf(sceneOf(change));
      expect(boundOf(sceneOf(mirrored(change))), `mirrored ${seed}`).toBe(bound);
      expect(boundOf(sceneOf(placedAnew(change, 90, 0, 0))), `turned ${seed}`).toBe(bound);
      expect(boundOf(sceneOf(placedAnew(change, 0, 4321, -777))), `moved ${seed}`).toBe(bound);
    }
  });
});

type Seeded = ReturnType<typeof seededRoom>;

function placedAnew(change: Seeded, degrees: number, x: number, y: number): PlainRoomChange {
  const move = <T extends { x: number; y: number }>(thing: T): T => ({ ...thing, ...add({ x, y }, turn(thing, degrees)) });
  return {
    ...change,
    room: { ...change.room, corners: (change.room.corners ?? []).map(move) },
    pieces: (change.pieces ?? []).map((piece) => ({ ...move(piece), rotation: (piece.rotation ?? 0) + degrees })),
  };
}

/** Left for right. Corners then run the other way round, so each wall is named by its other end. */
function mirrored(change: Seeded): PlainRoomChange {
  const ring = (change.room.corners ?? []).map((corner) => ({ ...corner, x: -corner.x }));
  const n = ring.length;
  const swings = { 'in-left': 'in-right', 'in-right': 'in-left', 'out-left': 'out-right', 'out-right': 'out-left' } as const;
  const openings = (change.room.openings ?? []).map((opening) => {
    const i = ring.findIndex((corner) => corner.id === opening.from);
    const a = ring[i] ?? { x: 0, y: 0, id: '' };
    const b = ring[(i + 1) % n] ?? a;
    const swing = opening.swing as keyof typeof swings | undefined;
    return {
      ...opening,
      from: b.id,
      offset: Math.hypot(a.x - b.x, a.y - b.y) - opening.offset - opening.width,
      ...(swing && { swing: swings[swing] }),
    };
  });
  return {
    ...change,
    room: { ...change.room, corners: ring.reverse(), openings },
    pieces: (change.pieces ?? []).map((piece) => {
      const seats = piece.seatSides;
      return {
        ...piece,
        x: -piece.x,
        rotation: -(piece.rotation ?? 0),
        ...(seats && { seatSides: seats }),
      };
    }),
  };
}

describe('the checker itself', () => {
  const scene = sceneOf({
    pieces: [
      { id: 's1', kind: 'shelf', x: 3000, y: 160, width: 1200, depth: 320 },
      { id: 't1', kind: 'table', x: 1200, y: 4000, width: 1000, depth: 600, seatSides: { back: 1 } },
    ],
  });
  const mat = { x: 4000, y: 3000, width: 1200, depth: 750, rotation: 0 };
  it.each([
    ['a mat that lies well', [mat], []],
    ['one through a wall', [{ ...mat, x: 5500 }], ['mat 0 reaches outside the walls', 'mat 0 has wall 1 run through it']],
    ['one on a table', [{ ...mat, x: 1200, y: 4000 }], ['mat 0 lies on t1', 'mat 0 lies on the seats of t1']],
    ['one before a shelf', [{ ...mat, x: 3000, y: 1200 }], ['mat 0 lies on the strip before s1']],
    ['two closer than the gap', [mat, { ...mat, y: 2000 }], ['mats 0 and 1 are closer than the gap']],
  ])('says what is wrong with %s', (_, mats, wrong) => {
    const said = wrongMats(scene, mats);
    if (wrong.length === 0) expect(said).toEqual([]);
    for (const line of wrong) expect(said).toContain(line);
  });
  it('says which way a mat shuts', () => {
    const shut = [900, 2150, 3400, 4650].map((x) => ({ ...mat, x: x + 100, y: 1500 }));
    expect(wrongMats(scene, shut).some((line) => line.startsWith('the way to t1 shrinks'))).toBe(true);
  });
});

// What a slip of the keys makes of a mat must not hold up the checks for minutes: made smaller from a class that the fuzz
// found (seed 102480), where each question to the ways met 20,000 gaps between mats.
it('mats of no depth beside ways of 1.80 m are asked about a few times only', { timeout: patience }, () => {
  const scene = buildScene(
    plainRoom({
      floorWork: { mat: { width: 2100, depth: 5e-324 }, gap: 1 },
      access: { required: true, routeWidth: 1800, pinchWidth: 400, turning: 1700, leastWidth: 1 },
      pieces: [
        { id: 'p0', kind: 'shelf', x: 4600, y: 160, rotation: 180, width: 1200, depth: 1, sides: ['front', 'back', 'left'] },
        { id: 'p1', kind: 'shelf', x: 3600, y: 160, rotation: 180, width: 0.001, depth: 5000, sides: ['back', 'left', 'right'] },
        { id: 'p2', kind: 'shelf', x: 500, y: 2000, width: 600, depth: 320 },
      ],
    }),
  );
  const before = workDone.links;
  lay(scene, 'better');
  expect(workDone.links - before).toBeLessThan(6_000_000);
});
