import type { Polygon } from './polygon.ts';
import { cross, type Point, sub } from './vec.ts';

/**
 * Minkowski sum of two convex rings that run clockwise on the plan; either may be a segment (two points) or a point.
 * The sum of a thing and a turned-over mat is where the mat's centre may not lie.
 */
export function convexSum(a: Polygon, b: Polygon): Polygon {
  const from = lowest(a);
  const to = lowest(b);
  const sum: Point[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const p = at(a, from + i);
    const q = at(b, to + j);
    sum.push({ x: p.x + q.x, y: p.y + q.y });
    const turn = cross(sub(at(a, from + i + 1), p), sub(at(b, to + j + 1), q));
    const isDoneA = i >= a.length;
    const isDoneB = j >= b.length;
    if (isDoneB || (!isDoneA && turn >= 0)) i++;
    if (isDoneA || (!isDoneB && turn <= 0)) j++;
  }
  return sum;
}

/** The ring turned about the origin by half a turn: it still runs clockwise. */
export const mirrored = (ring: Polygon): Polygon => ring.map((p) => ({ x: -p.x, y: -p.y }));

const at = (ring: Polygon, i: number): Point => ring[i % ring.length] as Point;

/** The corner from which the sides' directions turn from 0 to 360 degrees. */
function lowest(ring: Polygon): number {
  let best = 0;
  for (let i = 1; i < ring.length; i++) {
    const p = ring[i] as Point;
    const q = ring[best] as Point;
    if (p.y < q.y || (p.y === q.y && p.x < q.x)) best = i;
  }
  return best;
}
