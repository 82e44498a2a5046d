import { clearanceGrid } from '../geometry/clearanceGrid.ts';
import { convexParts } from '../geometry/convexParts.ts';
import { corridorCost, coverableGrid } from '../geometry/corridorCost.ts';
import { corridorRings, planCorridors } from '../geometry/corridors.ts';
import { type PackingFloor, PackingSpace } from '../geometry/packingSpace.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { Tile } from '../geometry/tile.ts';
import { distance } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import type { SeatStrip } from './seats.ts';
import type { KeptWay } from './waysKeep.ts';

/** mm between the points of the lattice that lanes are planned on, and how many points at most. */
const STEP = 100;
const MOST_POINTS = 30_000;
/** mm by which lanes are planned wider than they have to be, for what the lattice misses. */
const EASE = 4;

/**
 * Draws networks of lanes that join every front to a door, each as wide as its way has to stay, over floor of little use to
 * mats. With mats laid beside such lanes most ways are kept; whether all are is asked exactly.
 * @param frame degrees: the direction that the lanes run in
 */
export function matLanes(
  scene: Scene,
  strips: readonly SeatStrip[],
  floor: PackingFloor,
  tile: Tile,
  ways: readonly KeptWay[],
  frame: number,
): (random: (() => number) | null) => Polygon[] {
  const widest = Math.max(0, ...ways.map((way) => way.width)) + EASE;
  const standing = [
    ...scene.room.walls.map((wall) => [wall.a, wall.b]),
    ...scene.bodies.filter((body) => body.isObstacle).flatMap((body) => (body.isConvex ? [body.footprint] : convexParts(body.footprint))),
    ...strips.map(({ strip }) => strip),
  ];
  const grid = clearanceGrid(scene.room.outline, standing, frame, widest / 2, STEP, MOST_POINTS);
  const covered = coverableGrid(new PackingSpace(floor, tile, frame), grid);
  const ends = ways.map(({ target, width }) => ({ lines: target.lines, width: width + EASE, isSource: target.opening !== null }));
  const seen = new Set(ways.map(({ target }) => target.opening?.id));
  // A door that no other door leads to is still somewhere to come from.
  for (const { id, isWayIn, clearA, clearB, wall } of scene.room.openings) {
    if (!isWayIn || seen.has(id)) continue;
    ends.push({
      lines: [{ a: clearA, b: clearB, outward: wall.inward }],
      width: Math.min(widest, distance(clearA, clearB)),
      isSource: true,
    });
  }
  return (random) => planCorridors(grid, corridorCost(covered, grid, widest, random), ends).flatMap((lane) => corridorRings(lane, frame));
}
