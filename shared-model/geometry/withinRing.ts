import { convexSum, mirrored } from './convexSum.ts';
import { convexPenetration, waysOut } from './penetration.ts';
import { boundingBox, contains, type Polygon } from './polygon.ts';
import { add, distance, dot, lerp, type Point, type Segment, sub } from './vec.ts';

/** Distance (mm) from a point to a closed segment. */
export function distanceToSegment(s: Segment, p: Point): number {
  const along = sub(s.b, s.a);
  const squared = dot(along, along);
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, s.a), along) / squared));
  return distance(p, lerp(s.a, s.b, share));
}

/** How far (mm) a point lies outside a ring; 0 inside and on it. */
export function distanceOutside(ring: Polygon, p: Point): number {
  return contains(ring, p) ? 0 : Math.min(...ring.map((a, i) => distanceToSegment({ a, b: ring[(i + 1) % ring.length] as Point }, p)));
}

/**
 * True when a shape, given as convex parts, reaches outside a simple ring by more than `by` mm: one of its corners
 * does, or one of the ring's sides runs that deep through a part.
 */
export function reachesOutside(ring: Polygon, parts: readonly Polygon[], by: number): boolean {
  if (parts.some((part) => part.some((p) => distanceOutside(ring, p) > by))) return true;
  const { minX, minY, maxX, maxY } = boundingBox(parts.length === 1 ? (parts[0] as Polygon) : parts.flat());
  return ring.some((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    if (Math.max(a.x, b.x) < minX || Math.min(a.x, b.x) > maxX || Math.max(a.y, b.y) < minY || Math.min(a.y, b.y) > maxY) return false;
    return parts.some((part) => convexPenetration(part, [a, b]) > by);
  });
}

/**
 * Shifts (mm) that bring a shape inside a simple ring, shortest first, found one by one; none: it fits nowhere
 * without turning it. The first is the shortest of all (see `waysOut`).
 */
export function* shiftsInside(ring: Polygon, parts: readonly Polygon[]): Generator<Point> {
  const forbidden = ring.flatMap((a, i) => {
    const side = [a, ring[(i + 1) % ring.length] as Point];
    return parts.map((part) => convexSum(side, mirrored(part)));
  });
  for (const shift of waysOut(forbidden)) {
    const moved = parts.map((part) => part.map((p) => add(p, shift)));
    if (!reachesOutside(ring, moved, 1e-3)) yield shift;
  }
}
