import { contains, type Polygon } from '../geometry/polygon.ts';
import { add, cross, lerp, type Point, scale, sub } from '../geometry/vec.ts';
import type { Scene, SceneSide } from '../scene/types.ts';

/** mm: things that touch the front's line (a neighbour in the same row) do not stand before it. */
const TOUCH = 1;

/**
 * Free floor before a shelf side, mm along its outward normal, from the spot `along` mm right of its left end to the
 * first wall or piece in the way; at most `most`. 0 when something stands right there.
 */
export function freeFloorBefore(scene: Scene, side: SceneSide, along: number, most: number): number {
  const share = side.width === 0 ? 0.5 : Math.min(1, Math.max(0, along / side.width));
  const spot = lerp(side.edge.a, side.edge.b, share);
  const { outward } = side.edge;
  const beforeIt = add(spot, scale(outward, TOUCH));
  if (!contains(scene.room.outline, beforeIt)) return 0;
  let nearest = most;
  const meet = (ring: Polygon): void => {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i] as Point;
      const b = ring[(i + 1) % ring.length] as Point;
      const away = alongRay(spot, outward, a, b);
      if (away !== null && away < nearest) nearest = away;
    }
  };
  for (const body of scene.bodies) {
    if (!body.isObstacle || body.id === side.body.id) continue;
    if (contains(body.footprint, beforeIt)) return 0;
    meet(body.footprint);
  }
  meet(scene.room.outline);
  return Math.max(0, nearest);
}

/** How far along a ray it meets the segment a-b; null when it does not, or only touches it at the start. */
function alongRay(from: Point, direction: Point, a: Point, b: Point): number | null {
  const edge = sub(b, a);
  const across = cross(direction, edge);
  if (Math.abs(across) < 1e-9) return null;
  const t = cross(sub(a, from), edge) / across;
  const s = cross(sub(a, from), direction) / across;
  return t >= TOUCH && s >= 0 && s <= 1 ? t : null;
}
