import { overlapsBy } from '../geometry/penetration.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { add, length, type Point } from '../geometry/vec.ts';
import { reachesOutside } from '../geometry/withinRing.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import { boxOf, cachedParts, canClash } from './overlaps.ts';

/** mm: closer than this counts as touching */
const TOUCHING = 1;

/** Where pieces go when they are moved together, and how far (mm). */
export interface ClearShift {
  readonly to: readonly { readonly piece: string; readonly x: number; readonly y: number }[];
  readonly by: number;
}

/**
 * The first of the given shifts (shortest first, none beyond `most` mm) after which a piece, with the seats that name
 * it, stands inside the walls and clear of everything else. Positions come in whole mm. Null: none does, or the piece
 * is locked or no piece.
 */
export function clearShift(scene: Scene, body: SceneBody, shifts: Iterable<Point>, most: number): ClearShift | null {
  if (!body.piece || body.piece.locked) return null;
  const group = [body, ...scene.bodies.filter((other) => other.piece?.table === body.id)];
  if (group.some((member) => member.piece?.locked)) return null;
  const partsOf = cachedParts();
  for (const shift of shifts) {
    if (length(shift) > most) return null;
    const whole = wholeMm(body.center, shift);
    if (group.every((member) => isClear(scene, member, whole, group, partsOf))) {
      return { to: group.map(({ id, center }) => ({ piece: id, ...add(center, whole) })), by: length(whole) };
    }
  }
  return null;
}

/** The shift made a little longer, so that the piece lands on whole mm. */
function wholeMm(from: Point, shift: Point): Point {
  const along = (start: number, by: number): number => {
    if (Math.abs(by) < 1e-9) return 0;
    return (by > 0 ? Math.ceil(start + by - 1e-6) : Math.floor(start + by + 1e-6)) - start;
  };
  return { x: along(from.x, shift.x), y: along(from.y, shift.y) };
}

function isClear(scene: Scene, body: SceneBody, by: Point, group: readonly SceneBody[], partsOf: ReturnType<typeof cachedParts>): boolean {
  const moved = partsOf(body).map((part) => part.map((p) => add(p, by)));
  if (scene.room.isSound && reachesOutside(scene.room.outline, moved, TOUCHING)) return false;
  const box = boundingBox(moved.flat());
  // The boxes first: of hundreds of things few are near.
  return scene.bodies.every((other) => {
    const its = boxOf(other);
    if (its.minX >= box.maxX || its.maxX <= box.minX || its.minY >= box.maxY || its.maxY <= box.minY) return true;
    return group.includes(other) || !canClash(body, other) || !overlapsBy(moved, partsOf(other), TOUCHING);
  });
}
