import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { pickWith } from '#model/geometry/pickMost.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { tileRing } from '#model/geometry/tile.ts';
import { type MatProofStep, proveMats } from '#model/measures/matProof.ts';
import { type Mats, measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { waysKeeper } from '#model/measures/waysKeep.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { areApart, type LaidMat, wrongMats } from '#tests/support/matChecker.ts';
import { rasterPlaces } from '#tests/support/matRaster.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { patience, runs } from '#tests/support/runs.ts';
import { seededRoom } from '#tests/support/seededRoom.ts';

// What stands outside this project: the theorem on normal patterns (Herz 1972: rectangles packed into a rectangle with
// quarter turns can be pushed down and left until every side lies at a sum of sizes) makes a whole-number raster exact for
// empty rooms of whole-number sides; HiGHS, given that raster as plain text, tells the optimum; and the checker of layings.

const highs = await loadHighs();
const pick = pickWith(highs);

function proved(scene: Scene, rounds?: number, known?: Mats): { mats: Mats; steps: MatProofStep[] } {
  const work = proveMats(scene, seatStrips(scene), { pick, known: known ?? null, ...(rounds !== undefined && { rounds }) });
  const steps: MatProofStep[] = [];
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) {
      if (!step.value) throw new Error('the walls hold');
      return { mats: step.value, steps };
    }
    steps.push(step.value);
  }
}

/** As far as it takes until no more than one mat is open, or to the end. */
function provedToOne(scene: Scene, rounds?: number): Mats {
  const work = proveMats(scene, seatStrips(scene), { pick, ...(rounds !== undefined && { rounds }) });
  for (let step = work.next(); ; step = work.next()) {
    const mats = step.done ? step.value : step.value.mats;
    if (!mats) throw new Error('the walls hold');
    if (step.done || mats.upperBound - mats.count <= 1) return mats;
  }
}

const layingOf = ({ places, tile }: Mats) =>
  places.map(({ x, y, turn }) => ({ x, y, rotation: turn, width: tile.width, depth: tile.depth }));

const emptyRoom = (width: number, depth: number, floorWork: PlainRoomChange['floorWork']): PlainRoomChange => ({
  room: {
    corners: [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: width, y: 0 },
      { id: 'c3', x: width, y: depth },
      { id: 'c4', x: 0, y: depth },
    ],
    openings: [],
  },
  floorWork: floorWork ?? {},
});

/** The most rectangles of a by b, either way, in one of w by d, all whole: every place on the raster, no square covered twice. */
function rasterOptimum(w: number, d: number, a: number, b: number): number {
  const covering = new Map<string, string[]>();
  const names: string[] = [];
  for (const [p, q] of [
    [a, b],
    [b, a],
  ] as const)
    for (let x = 0; x + p <= w; x++)
      for (let y = 0; y + q <= d; y++) {
        const name = `x${names.length}`;
        names.push(name);
        for (let i = x; i < x + p; i++)
          for (let j = y; j < y + q; j++) {
            const square = `${i},${j}`;
            covering.set(square, [...(covering.get(square) ?? []), name]);
          }
      }
  if (names.length === 0) return 0;
  const rows = [...covering.values()].map((list, k) => ` r${k}: ${list.join(' + ')} <= 1`);
  const text = `Maximize\n obj: ${names.join(' + ')}\nSubject To\n${rows.join('\n')}\nBinary\n ${names.join(' ')}\nEnd`;
  return Math.round(highs.solve(text, { output_flag: false }).ObjectiveValue);
}

describe('mats proven in empty rooms', () => {
  // Sizes in units of 100 mm: room, mat; the gap is nothing, so mats are the rectangles themselves.
  const sizes: [number, number, number, number][] = [
    [14, 10, 4, 3],
    [13, 11, 5, 3],
    [11, 7, 4, 3],
    [17, 10, 6, 4],
    [9, 9, 5, 2],
    [16, 11, 5, 4],
    [19, 13, 6, 5],
    [15, 12, 7, 3],
  ];
  it.each(sizes.slice(0, runs(4, sizes.length)))('a room of %i by %i takes the mats of %i by %i that the raster takes', (w, d, a, b) => {
    const scene = buildScene(plainRoom(emptyRoom(w * 100, d * 100, { mat: { width: a * 100, depth: b * 100 }, gap: 0 })));
    const { mats } = proved(scene, 40);
    const optimum = rasterOptimum(w, d, a, b);
    expect(wrongMats(scene, layingOf(mats))).toEqual([]);
    expect(mats.count).toBeLessThanOrEqual(optimum);
    expect(mats.upperBound).toBeGreaterThanOrEqual(optimum);
    expect({ count: mats.count, proven: mats.proven }).toEqual({ count: optimum, proven: true });
  });

  it('a proof that was cut off is gone on with from its bounds, and comes to the raster’s count', () => {
    const scene = buildScene(plainRoom(emptyRoom(1400, 1000, { mat: { width: 400, depth: 300 }, gap: 0 })));
    const optimum = rasterOptimum(14, 10, 4, 3);
    const cut: Mats = { ...proved(scene, 0).mats, upperBound: optimum, proven: false };
    const fewer = { ...cut, count: cut.count - 1, places: cut.places.slice(1) };
    for (const known of [cut, fewer]) {
      const { mats, steps } = proved(scene, 40, known);
      expect(steps[0]?.mats.upperBound ?? optimum).toBe(optimum);
      expect(wrongMats(scene, layingOf(mats))).toEqual([]);
      expect({ count: mats.count, proven: mats.proven }).toEqual({ count: optimum, proven: true });
    }
  });

  it('a millimetre too little is told apart, whatever the cells', () => {
    // 2 x 750 + 300 = 1800 across, 2 x 1200 + 300 = 2700 along: four, or two where a row is a millimetre short.
    const mat = { mat: { width: 1200, depth: 750 }, gap: 300 };
    expect(proved(buildScene(plainRoom(emptyRoom(2700, 1800, mat)))).mats).toMatchObject({ count: 4, upperBound: 4, proven: true });
    expect(proved(buildScene(plainRoom(emptyRoom(2699, 1799, mat)))).mats).toMatchObject({ proven: true, count: 2, upperBound: 2 });
  });
});

describe('mats proven with ways', () => {
  /** A passage, a door at its one end and a shelf at the other that opens towards it. */
  const passage = (depth: number): PlainRoomChange => ({
    room: {
      corners: [
        { id: 'c1', x: 0, y: 0 },
        { id: 'c2', x: 6000, y: 0 },
        { id: 'c3', x: 6000, y: depth },
        { id: 'c4', x: 0, y: depth },
      ],
      openings: [{ id: 'd1', kind: 'door', from: 'c4', offset: (depth - 1000) / 2, width: 1000, clear: 950, swing: 'none' }],
    },
    floorWork: { mat: { width: 1200, depth: 750 }, gap: 300, wanted: 1 },
    pieces: [{ id: 's1', kind: 'shelf', label: 'Shelf', x: 5840, y: depth / 2, width: depth - 20, depth: 320, height: 700, rotation: 90 }],
  });

  it('no mat in a passage where 750 mm of mat leave less than the way needs', () => {
    // 1660 - 750 = 910 is less than the 36 in (914.4 mm) of the route; the bound by area alone would let three lie.
    const scene = buildScene(plainRoom(passage(1660)));
    expect(measureMats(scene, seatStrips(scene), 'better')?.upperBound).toBeGreaterThan(1);
    expect(proved(scene).mats).toMatchObject({ count: 0, upperBound: 0, proven: true });
  });

  it('a row of them where what they leave is enough', () => {
    // 1670 - 750 = 920: along one wall, from end to end 6000 - 320 - 600 = 5080 take three (3 x 1500 - 300 = 4200), four need 5700.
    const scene = buildScene(plainRoom(passage(1670)));
    const { mats } = proved(scene);
    expect(mats.upperBound).toBe(3);
    expect(wrongMats(scene, layingOf(mats))).toEqual([]);
    expect(mats.count).toBeGreaterThanOrEqual(2);
  });

  /** The most places of a raster that lie apart and keep every way: all are tried. Independent of cells, limits and solver. */
  function mostOnRaster(scene: Scene, places: readonly LaidMat[]): LaidMat[] {
    const { gap } = scene.classroom.floorWork;
    const keeper = waysKeeper(scene);
    const ring = ({ x, y, rotation, width, depth }: LaidMat) => tileRing({ width, depth, gap }, { x, y, turn: rotation });
    let best: LaidMat[] = [];
    const lay = (laid: LaidMat[], open: readonly LaidMat[]): void => {
      if (laid.length > best.length) best = laid;
      open.forEach((place, k) => {
        if (laid.length + open.length - k <= best.length) return;
        const next = [...laid, place];
        if (!keeper.keeps(next.map(ring))) return;
        lay(
          next,
          open.slice(k + 1).filter((other) => areApart(place, other, gap)),
        );
      });
    };
    lay([], places);
    return best;
  }

  /** A small room with a door, and a shelf and a table somewhere before its walls. */
  function smallRoom(seed: number): PlainRoomChange {
    const random = seededRandom(seed);
    const between = (low: number, high: number): number => Math.round(low + random() * (high - low));
    const [width, depth] = [between(4200, 5400), between(3400, 4200)];
    return {
      ...emptyRoom(width, depth, { mat: { width: 1200, depth: 750 }, gap: 300, wanted: 1 }),
      room: {
        corners: emptyRoom(width, depth, {}).room?.corners ?? [],
        openings: [{ id: 'd1', kind: 'door', from: 'c1', offset: between(300, width - 1400), width: 1000, clear: 950, swing: 'none' }],
      },
      pieces: [
        {
          id: 's1',
          kind: 'shelf',
          label: 'Shelf',
          x: between(700, width - 700),
          y: depth - 170,
          width: 1200,
          depth: 320,
          height: 700,
          rotation: 180,
        },
        {
          id: 't1',
          kind: 'other',
          label: 'Table',
          x: between(800, width - 800),
          y: between(1400, depth - 1400),
          width: between(300, 900),
          depth: 400,
          height: 500,
        },
      ],
    };
  }

  it(
    'no laying on a raster that keeps every way is more than was proven possible',
    () => {
      let all = 0;
      let held = 0;
      for (let seed = 1; seed <= runs(2, 20); seed++) {
        const scene = buildScene(plainRoom(smallRoom(seed)));
        const best = mostOnRaster(scene, rasterPlaces(scene, 0, 60));
        expect(wrongMats(scene, best), `smallRoom(${seed})`).toEqual([]);
        const { mats } = proved(scene, runs(2, 40));
        expect(wrongMats(scene, layingOf(mats)), `smallRoom(${seed})`).toEqual([]);
        expect(mats.upperBound, `smallRoom(${seed})`).toBeGreaterThanOrEqual(best.length);
        all += best.length;
        held += mats.upperBound;
      }
      // Rasters that hold next to nothing would prove next to nothing.
      expect(all).toBeGreaterThan(held / 2);
    },
    patience,
  );

  it(
    'what it says on the way only comes closer, and holds of every laying that is found',
    () => {
      const many = runs(1, 6);
      for (let seed = 1; seed <= many; seed++) {
        const scene = buildScene(plainRoom(seededRoom(seed)));
        if (!scene.room.isSound) continue;
        const { mats, steps } = proved(scene, runs(2, 20));
        expect(wrongMats(scene, layingOf(mats)), `seededRoom(${seed})`).toEqual([]);
        steps.slice(1).forEach((step, i) => {
          const before = steps[i]?.mats;
          expect(step.mats.count, `seededRoom(${seed})`).toBeGreaterThanOrEqual(before?.count ?? 0);
          expect(step.mats.upperBound, `seededRoom(${seed})`).toBeLessThanOrEqual(before?.upperBound ?? 0);
        });
        // Layings that another search finds are never more than was proven possible.
        const other = measureMats(scene, seatStrips(scene), 6);
        expect(other?.count ?? 0, `seededRoom(${seed})`).toBeLessThanOrEqual(mats.upperBound);
      }
    },
    patience,
  );
});

describe('the twelve rooms', () => {
  const room = (number: number): Scene => {
    const name = `room-${String(number).padStart(2, '0')}.json`;
    const read = readClassroom(JSON.parse(readFileSync(join(import.meta.dirname, '../bench/rooms', name), 'utf8')));
    if (!read.ok) throw new Error(`${name} does not read`);
    return buildScene(read.classroom);
  };
  const small = [2, 4, 9, 7, 3, 8, 6, 5];
  /** Some minutes each; the last one ten to twenty. The short form asks only one of them, and only for some rounds. */
  const large = [11, 10, 1, 12];

  it(
    'eight of them are proven, and every laying holds',
    () => {
      const done = small.map((number) => {
        const scene = room(number);
        const { mats } = proved(scene);
        expect(wrongMats(scene, layingOf(mats)), `room ${number}`).toEqual([]);
        return { number, count: mats.count, most: mats.upperBound, proven: mats.proven };
      });
      expect(
        done.filter(({ proven }) => !proven),
        JSON.stringify(done),
      ).toEqual([]);
    },
    patience,
  );

  it.each(large.slice(0, runs(1, large.length)))(
    'room %i has no more than one open in the end, and its layings hold',
    (number) => {
      const scene = room(number);
      const mats = provedToOne(scene, runs<number | undefined>(2, undefined));
      expect(wrongMats(scene, layingOf(mats))).toEqual([]);
      expect(mats.upperBound - mats.count).toBeLessThanOrEqual(runs(3, 1));
    },
    patience,
  );
});
