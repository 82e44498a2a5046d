import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packingBound } from '#model/geometry/packingBound.ts';
import type { PackingFloor } from '#model/geometry/packingSpace.ts';
import type { Tile } from '#model/geometry/tile.ts';
import { matFloor, matTurns } from '#model/measures/floor.ts';
import { measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { coveringSets, rasterPlaces, tooClose } from '#tests/support/matRaster.ts';
import { mostChosen } from '#tests/support/mostChosen.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';
import { patience, runs } from '#tests/support/runs.ts';
import { seededRoom } from '#tests/support/seededRoom.ts';
import { withRoom } from '#tests/support/withRoom.ts';

// The most mats on a raster, told by HiGHS (a general-purpose solver for mixed-integer programmes), can lie: so no bound
// may be below it. Ways are left out of both.

/** Every bound that is reckoned without ways. Each must hold. */
const bounds: Readonly<Record<string, (floor: PackingFloor, tile: Tile, turns: readonly number[]) => number>> = { 'by area': packingBound };

/** Places that a programme may choose from: it then ends in seconds. */
const MOST_PLACES = runs(220, 450);
const rooms = join(import.meta.dirname, '../bench/rooms');

function askRasters(classroom: Classroom): { optimum: number; bound: number } {
  const scene = buildScene(classroom);
  const strips = seatStrips(scene);
  const { mat, gap } = classroom.floorWork;
  const turns = matTurns(scene, Math.min(mat.width, mat.depth));
  const told = Object.entries(bounds).map(([name, bound]) => [name, bound(matFloor(scene, strips), { ...mat, gap }, turns)] as const);
  const quick = measureMats(scene, strips, 'quick');
  let optimum = 0;
  for (const turn of turns) {
    const places = rasterPlaces(scene, turn, MOST_PLACES);
    const { members } = mostChosen(places.length, coveringSets(places));
    const chosen = places.filter((_, k) => members.includes(k));
    expect(tooClose(chosen, gap), 'what the solver chose lies apart').toEqual([]);
    for (const [name, bound] of told)
      expect(bound, `${name}, turn ${turn}: ${JSON.stringify(chosen)}`).toBeGreaterThanOrEqual(chosen.length);
    expect(quick?.upperBound, `turn ${turn}`).toBeGreaterThanOrEqual(chosen.length);
    optimum = Math.max(optimum, chosen.length);
  }
  return { optimum, bound: quick?.upperBound ?? 0 };
}

const emptyRoom = (width: number, depth: number): PlainRoomChange => ({
  room: {
    corners: [
      [0, 0],
      [width, 0],
      [width, depth],
      [0, depth],
    ].map(([x = 0, y = 0], i) => ({ id: `c${i + 1}`, x, y })),
    openings: [],
  },
});

describe('rasters against the bounds', () => {
  // n mats of 1200 in a row with gaps of 300 take n x 1500 - 300; of 750, n x 1050 - 300: grown mats tile the whole.
  it.each([
    [2, 2],
    [3, 2],
    [1, 3],
  ])('a room that %i by %i mats fill: raster and bound are both that, so a bound one lower would be told', (across, down) => {
    const classroom = plainRoom(emptyRoom(across * 1500 - 300, down * 1050 - 300));
    expect(askRasters(classroom)).toEqual({ optimum: across * down, bound: across * down });
  });

  it.each(readdirSync(rooms).filter((name) => /^room-\d+\.json$/.test(name)))('%s', { timeout: patience }, (name) => {
    const read = readClassroomFile(readFileSync(join(rooms, name), 'utf8'));
    if (!read.ok) throw new Error(`${name} does not read`);
    expect(askRasters(read.classroom).optimum).toBeGreaterThan(0);
  });

  it('seeded rooms', { timeout: patience }, () => {
    let all = 0;
    let most = 0;
    for (let seed = 1; seed <= runs(8, 150); seed++) {
      const classroom = plainRoom(seededRoom(seed));
      const { optimum, bound } = withRoom(`seed ${seed}`, classroom, () => askRasters(classroom));
      all += optimum;
      most += bound;
    }
    // Rasters that hold next to nothing would prove next to nothing.
    expect(all).toBeGreaterThan(most / 2);
  });
});
