import { boundingBox, boxesMeet, edges, grownBox } from '../geometry/polygon.ts';
import { lerp, type Point, type Segment } from '../geometry/vec.ts';
import { distanceToSegment } from '../geometry/withinRing.ts';
import type { Scene, SceneBody, SceneEdge } from '../scene/types.ts';
import { boxOf } from './overlaps.ts';

/** Fixtures that hold a shelf up as a wall does. */
const wallLike: ReadonlySet<string> = new Set(['partition', 'built-in', 'column']);

/**
 * Whether a wall, a fixed part of the room or another shelf stands along the back of a shelf, or along its front: the
 * middle and at least one end of that long side lie no more than `near` mm away from one.
 */
export function isBacked(scene: Scene, body: SceneBody, near: number): boolean {
  const behind: Segment[] = [...scene.room.walls];
  const around = grownBox(boundingBox(Object.values(body.edges).flatMap(({ a, b }) => [a, b])), near + 1);
  for (const other of scene.bodies) {
    if (other === body || !boxesMeet(boxOf(other), around)) continue;
    if (other.kind === 'shelf' || wallLike.has(other.kind)) behind.push(...edges(other.footprint));
  }
  const isNear = (p: Point): boolean => behind.some((segment) => distanceToSegment(segment, p) <= near + 1e-6);
  const isAlong = ({ a, b }: SceneEdge): boolean => isNear(lerp(a, b, 0.5)) && (isNear(a) || isNear(b));
  return isAlong(body.edges.back) || isAlong(body.edges.front);
}
