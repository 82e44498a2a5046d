import { segmentsMeet } from '../geometry/polygon.ts';
import { distance, lerp, type Point } from '../geometry/vec.ts';
import type { Scene, SceneOpening, SceneWall } from '../scene/types.ts';

/** What is wrong with the walls and openings themselves, before anything stands in the room. */
export interface WallFaults {
  /** Two walls that cross or touch without being neighbours, or a wall without length (`one` and `other` are the same). */
  readonly crossed: readonly { readonly one: SceneWall; readonly other: SceneWall; readonly at: Point }[];
  /** Openings that reach past the end of their wall, by so many mm. */
  readonly tooLong: readonly { readonly opening: SceneOpening; readonly by: number; readonly at: Point }[];
  /** Doors and passages that share wall, by so many mm. */
  readonly shared: readonly { readonly one: SceneOpening; readonly other: SceneOpening; readonly by: number; readonly at: Point }[];
  /** Ids of openings that name a corner the room does not have. */
  readonly nowhere: readonly string[];
}

/** mm: shorter than this and a wall is a corner typed twice */
const NO_LENGTH = 1e-6;

export function measureWallFaults(scene: Scene): WallFaults {
  const { walls, openings } = scene.room;
  const placed = new Set(openings.map((o) => o.id));
  return {
    crossed: crossedWalls(walls),
    tooLong: openings.flatMap((opening) => {
      const by = opening.raw.offset + opening.raw.width - distance(opening.wall.a, opening.wall.b);
      return by > 0 ? [{ opening, by, at: opening.b }] : [];
    }),
    shared: sharedWall(openings.filter((o) => o.isWayIn)),
    nowhere: scene.classroom.room.openings.filter((o) => !placed.has(o.id)).map((o) => o.id),
  };
}

function crossedWalls(walls: readonly SceneWall[]): WallFaults['crossed'] {
  const empty = walls.filter((wall) => distance(wall.a, wall.b) < NO_LENGTH);
  const found = empty.map((wall) => ({ one: wall, other: wall, at: wall.a }));
  for (let i = 0; i < walls.length; i++) {
    for (let j = i + 2; j < walls.length; j++) {
      const one = walls[i] as SceneWall;
      const other = walls[j] as SceneWall;
      if ((i === 0 && j === walls.length - 1) || empty.includes(one) || empty.includes(other)) continue;
      if (isAcrossEmpty(walls, i, j) || !segmentsMeet(one, other)) continue;
      found.push({ one, other, at: meetingPoint(one, other) });
    }
  }
  return found;
}

/** Walls with only an empty one between them are neighbours in fact. */
function isAcrossEmpty(walls: readonly SceneWall[], i: number, j: number): boolean {
  const isEmptyRun = (from: number, to: number): boolean => {
    for (let k = from + 1; k < to; k++) {
      const wall = walls[k % walls.length] as SceneWall;
      if (distance(wall.a, wall.b) >= NO_LENGTH) return false;
    }
    return true;
  };
  return isEmptyRun(i, j) || isEmptyRun(j, i + walls.length);
}

function meetingPoint(s: SceneWall, t: SceneWall): Point {
  const ux = s.b.x - s.a.x;
  const uy = s.b.y - s.a.y;
  const vx = t.b.x - t.a.x;
  const vy = t.b.y - t.a.y;
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-9) return lerp(t.a, t.b, 0.5);
  const share = ((t.a.x - s.a.x) * vy - (t.a.y - s.a.y) * vx) / det;
  return lerp(s.a, s.b, Math.min(1, Math.max(0, share)));
}

function sharedWall(ways: readonly SceneOpening[]): WallFaults['shared'] {
  return ways.flatMap((one, i) =>
    ways.slice(i + 1).flatMap((other) => {
      if (one.wall !== other.wall) return [];
      const from = Math.max(one.raw.offset, other.raw.offset);
      const by = Math.min(one.raw.offset + one.raw.width, other.raw.offset + other.raw.width) - from;
      return by > 0 ? [{ one, other, by, at: one.raw.offset > other.raw.offset ? one.a : other.a }] : [];
    }),
  );
}
