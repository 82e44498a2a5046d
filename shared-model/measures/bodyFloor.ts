import { pointBefore } from '../geometry/frontLine.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { grown, isInPatch, minus, patchesOf, type Region, union } from '../geometry/region.ts';
import { freeStretches, viewFront } from '../geometry/tangentDiscs.ts';
import type { Point } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import { doorLine } from './targets.ts';
import { WaysField } from './waysField.ts';

/** mm by which a body is taken smaller, so that one that just fits is not lost in rounding. */
const EASE = 0.3;

/** Floor for a round body of one diameter (mm) that comes in by a door; the doors' own width is left out. */
export interface BodyFloor {
  /** Where its middle can be. */
  readonly middles: Region;
  /** What it covers from there. */
  readonly covered: Region;
}

/** To about 0.5 mm. Seats are pushed in: nobody sits at the tables. Empty where the walls do not hold. */
export function bodyFloor(scene: Scene, body: number): BodyFloor {
  if (!scene.room.isSound) return { middles: [], covered: [] };
  const radius = Math.max(1, body / 2 - EASE);
  const standing = union(scene.bodies.filter((b) => b.isObstacle).map((b) => [b.footprint]));
  const free = patchesOf(minus(grown([scene.room.outline], -radius), grown(standing, radius)));
  const entries = entryPoints(scene, body);
  const entered = free.filter((patch) => entries.some((p) => isInPatch(patch, p)));
  const middles = entered.flatMap(({ outline, holes }) => [outline, ...holes]);
  return { middles, covered: grown(middles, radius) };
}

/** Middles of bodies that touch the inner line of a door or passage: one for each stretch free for it. */
function entryPoints(scene: Scene, body: number): Point[] {
  const field = WaysField.of(scene, 'pushed in');
  return scene.room.openings
    .filter((opening) => opening.isWayIn)
    .flatMap((opening) => {
      const line = doorLine(opening);
      const near = field.grid.near(boundingBox([line.a, line.b]), body).flatMap((index) => field.parts[index] ?? []);
      return freeStretches(viewFront(line, near, body, field.isOpenFloor), body).map(([from, to]) =>
        pointBefore(line, (from + to) / 2, body / 2),
      );
    });
}
