import { describe, expect, it } from 'vitest';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { measureWays, type Way } from '#model/measures/ways.ts';
import { keeperOfMeasured, waysKeeper } from '#model/measures/waysKeep.ts';
import { measureWaysAndNarrow } from '#model/measures/waysMeasure.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom, Piece } from '#model/schema/types.ts';
import { mirrored, mirrorSide, moved, withPieces } from '#tests/support/movedRoom.ts';
import { randomWayRoom } from '#tests/support/randomWayRoom.ts';
import { runs } from '#tests/support/runs.ts';

const SEEDS = Array.from({ length: runs(24, 200) }, (_, i) => 7001 + i);
const nameOf = (way: Way): string => `${way.to}/${way.side ?? ''}`;
const widths = (classroom: Classroom): Map<string, Way> => new Map(measureWays(buildScene(classroom)).map((way) => [nameOf(way), way]));

function expectSame(seed: number, before: Classroom, after: Classroom, rename = (name: string): string => name): void {
  const now = widths(after);
  for (const [name, way] of widths(before)) {
    const other = now.get(rename(name));
    expect(other, `seed ${seed}: ${name} is gone`).toBeDefined();
    expect(Math.abs((other?.width ?? -1) - way.width), `seed ${seed}: ${name} was ${way.width}, is ${other?.width}`).toBeLessThan(0.02);
    expect(Math.abs((other?.share ?? -1) - way.share), `seed ${seed}: share of ${name}`).toBeLessThan(1e-3);
  }
}

describe('ways stay the same', () => {
  it.each(SEEDS)('when the room is turned and shifted (seed %i)', (seed) => {
    const room = randomWayRoom(seed);
    const random = seededRandom(seed);
    expectSame(seed, room, moved(room, 360 * random(), 5000 * random() - 2500, 5000 * random() - 2500));
    expectSame(seed, room, moved(room, 90, 12_345, -6_789));
  });

  it.each(SEEDS)('in a mirror (seed %i)', (seed) => {
    const room = randomWayRoom(seed);
    const swap = (name: string): string => name.replace(/\/(left|right)$/, (_, side: 'left' | 'right') => `/${mirrorSide[side]}`);
    expectSame(seed, room, mirrored(room), swap);
  });

  it.each(SEEDS)('when things are named and listed otherwise (seed %i)', (seed) => {
    const room = randomWayRoom(seed);
    const renamed = withPieces(room, (p) => ({ ...p, id: `q${p.id}` }));
    const turnedRound = {
      ...renamed,
      arrangements: renamed.arrangements.map((a) => ({ ...a, pieces: [...a.pieces].reverse() })),
    };
    expectSame(seed, room, turnedRound, (name) => (name.startsWith('p') ? `q${name}` : name));
  });
});

describe('more furniture', () => {
  it.each(SEEDS)('never widens a way (seed %i)', (seed) => {
    const room = randomWayRoom(seed);
    const random = seededRandom(seed * 31);
    const more: Piece = {
      ...(room.arrangements[0]?.pieces[0] as Piece),
      id: 'more',
      kind: 'other',
      x: 5000 * random(),
      y: 4500 * random(),
      rotation: 360 * random(),
    };
    const fuller = { ...room, arrangements: room.arrangements.map((a) => ({ ...a, pieces: [...a.pieces, more] })) };
    const now = widths(fuller);
    for (const [name, way] of widths(room))
      expect((now.get(name)?.width ?? 0) - way.width, `seed ${seed}: ${name} widened`).toBeLessThan(0.01);
  });

  it.each(SEEDS)('is told to keep the ways just when it does (seed %i)', (seed) => {
    const scene = buildScene(randomWayRoom(seed));
    const random = seededRandom(seed * 17);
    const keeper = waysKeeper(scene, 800);
    for (let i = 0; i < 6; i++) {
      const x = 5000 * random();
      const y = 4500 * random();
      const mat = [
        { x, y },
        { x: x + 1200, y },
        { x: x + 1200, y: y + 750 },
        { x, y: y + 750 },
      ];
      const before = measureWays(scene).filter((way) => way.from !== null);
      const after = measureWays(scene, { extra: [mat] });
      const isKept = before.every((way) => {
        const now = after.find((other) => nameOf(other) === nameOf(way));
        return (now?.width ?? 0) >= Math.min(800, way.width) - 1e-3;
      });
      expect(keeper.keeps([mat]), `seed ${seed}, mat ${i}`).toBe(isKept);
    }
  });

  it.each(SEEDS.slice(0, 8))('is told the same from ways that are measured already, and which obstacles to take away (seed %i)', (seed) => {
    const scene = buildScene(randomWayRoom(seed));
    const random = seededRandom(seed * 19);
    const keeper = waysKeeper(scene);
    const measured = keeperOfMeasured(scene, measureWaysAndNarrow(scene));
    expect(measured.ways.map(({ target }) => target)).toEqual(keeper.ways.map(({ target }) => target));
    for (let i = 0; i < 6; i++) {
      const mats = Array.from({ length: 3 }, () => {
        const [x, y] = [5000 * random(), 4500 * random()];
        return [
          { x, y },
          { x: x + 1200, y },
          { x: x + 1200, y: y + 750 },
          { x, y: y + 750 },
        ];
      });
      const found = keeper.inTheWay(mats);
      expect(found === null, `seed ${seed}, mats ${i}`).toBe(keeper.keeps(mats));
      expect(measured.inTheWay(mats), `seed ${seed}, mats ${i}`).toEqual(found);
      for (const k of found ?? []) expect(mats[k]).toBeDefined();
    }
  });
});

describe('the two measurements', () => {
  it.each(SEEDS.slice(0, 12))('agree up to the route and beyond (seed %i)', (seed) => {
    const scene = buildScene(randomWayRoom(seed));
    const whole = measureWays(scene);
    const { ways, exact } = measureWaysAndNarrow(scene);
    for (const [i, way] of whole.entries()) {
      expect(Math.abs((exact()[i]?.width ?? -1) - way.width), `seed ${seed}: ${nameOf(way)}`).toBeLessThan(0.02);
      expect(Math.abs((ways[i]?.width ?? -1) - Math.min(915, way.width))).toBeLessThan(0.02);
      expect(ways[i]?.judged).toBeGreaterThanOrEqual((ways[i]?.width ?? 0) - 0.02);
    }
  });
});
