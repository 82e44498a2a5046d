import { type Box, boundingBox, contains, edges, type Polygon } from '../geometry/polygon.ts';
import { add, cross, lerp, type Point, type Segment, scale, sub } from '../geometry/vec.ts';
import type { OpenSide, Scene } from '../scene/types.ts';
import { boxOf } from './overlaps.ts';

/** mm: things that touch the front's line (a neighbour in the same row) do not stand before it. */
const TOUCH = 1;

/** What stands in the way of a walking body. */
export interface Obstacle {
  readonly id: string;
  readonly ring: Polygon;
  readonly box: Box;
}

export function obstaclesOf({ bodies }: Scene): Obstacle[] {
  return bodies.filter((body) => body.isObstacle).map((body) => ({ id: body.id, ring: body.footprint, box: boxOf(body) }));
}

/**
 * Free floor before a shelf side: a function of the spot `along` mm right of the side's left end, giving the mm along
 * the outward normal to the first wall or piece in the way, at most `most`; 0 when something stands right there.
 */
export function freeFloorBefore(scene: Scene, obstacles: readonly Obstacle[], side: OpenSide, most: number): (along: number) => number {
  const { a, b, outward } = side.edge;
  const strip = boundingBox([a, b, add(a, scale(outward, most)), add(b, scale(outward, most))]);
  const rings = obstacles.filter(({ id, box }) => id !== side.body.id && boxesMeet(strip, box)).map(({ ring }) => ring);
  const inTheWay = [...rings, scene.room.outline].flatMap(edges);
  const lookUp = (along: number): number => {
    const spot = lerp(a, b, side.width === 0 ? 0.5 : Math.min(1, Math.max(0, along / side.width)));
    if (isTaken(add(spot, scale(outward, TOUCH)), rings, scene.room.outline)) return 0;
    let nearest = most;
    for (const edge of inTheWay) nearest = Math.min(nearest, alongRay(spot, outward, edge));
    return nearest;
  };
  // Mends try the same spot at many heights.
  const kept = new Map<number, number>();
  return (along) => {
    const floor = kept.get(along) ?? lookUp(along);
    kept.set(along, floor);
    return floor;
  };
}

const isTaken = (p: Point, rings: readonly Polygon[], room: Polygon): boolean =>
  !contains(room, p) || rings.some((ring) => contains(ring, p));

const boxesMeet = (p: Box, q: Box): boolean =>
  p.minX - TOUCH <= q.maxX && q.minX <= p.maxX + TOUCH && p.minY - TOUCH <= q.maxY && q.minY <= p.maxY + TOUCH;

/** How far along a ray it meets an edge; infinite when it does not, or only touches it at the start. */
function alongRay(from: Point, direction: Point, { a, b }: Segment): number {
  const edge = sub(b, a);
  const across = cross(direction, edge);
  if (Math.abs(across) < 1e-9) return Infinity;
  const t = cross(sub(a, from), edge) / across;
  const s = cross(sub(a, from), direction) / across;
  return t >= TOUCH && s >= 0 && s <= 1 ? t : Infinity;
}
