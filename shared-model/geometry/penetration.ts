import { convexHull } from './convexParts.ts';
import { convexSum, mirrored } from './convexSum.ts';
import type { Polygon } from './polygon.ts';
import { add, cross, dot, inwardNormal, type Point, type Segment, scale, sub } from './vec.ts';

/** mm: what a ring may be crossed by and still count as touched, in the geometry's own rounding. */
const NOISE = 1e-6;
/** Above this many pairs of parts (an outline of dozens of corners) the shapes' hulls stand in for them. */
const MOST_PAIRS = 64;
const MOST_CROSSED = 800;

/** Signed distance (mm) from a point to a convex clockwise ring's nearest supporting line: positive inside. */
function depthIn(ring: Polygon, p: Point): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    const normal = inwardNormal(a, b);
    if (normal.x === 0 && normal.y === 0) continue;
    least = Math.min(least, dot(normal, sub(p, a)));
  }
  return least;
}

/**
 * How far (mm) two convex clockwise rings have to move apart to touch; 0 or less: they do not overlap.
 * Exact: the least overlap along the normals of either (separating axes).
 */
export function convexPenetration(a: Polygon, b: Polygon): number {
  return Math.min(leastOverlap(a, b), leastOverlap(b, a));
}

function leastOverlap(a: Polygon, b: Polygon): number {
  let least = Infinity;
  for (let i = 0; i < a.length; i++) {
    const from = a[i] as Point;
    const normal = inwardNormal(from, a[(i + 1) % a.length] as Point);
    if (normal.x === 0 && normal.y === 0) continue;
    let reach = -Infinity;
    for (const p of b) reach = Math.max(reach, dot(normal, sub(p, from)));
    if (reach < least) least = reach;
    if (least <= 0) return least;
  }
  return least;
}

/** Where `moving` may not be shifted to, as convex rings about the origin: one for each pair of parts. */
export function forbiddenShifts(moving: readonly Polygon[], fixed: readonly Polygon[]): Polygon[] {
  if (moving.length * fixed.length > MOST_PAIRS) return forbiddenShifts([convexHull(moving.flat())], [convexHull(fixed.flat())]);
  return fixed.flatMap((f) => moving.map((m) => convexSum(f, mirrored(m))));
}

/**
 * Shifts out of a union of convex rings, shortest first, found one by one: the feet of the origin on their edges, and
 * where edges of two rings cross. Those that still lie inside a ring are left out, so the first is the shortest of all
 * (with more than 800 edges the crossings are left out, and the first is no shorter than the shortest).
 */
export function* waysOut(rings: readonly Polygon[]): Generator<Point> {
  const all = rings.flatMap((ring) => ring.map((a, i): Edge => ({ a, b: ring[(i + 1) % ring.length] as Point, ring })));
  const out = all.map(footOfOrigin);
  if (all.length <= MOST_CROSSED) out.push(...crossings(all));
  out.sort((p, q) => dot(p, p) - dot(q, q));
  for (const p of out) if (rings.every((ring) => depthIn(ring, p) <= NOISE)) yield p;
}

interface Edge extends Segment {
  readonly ring: Polygon;
}

function footOfOrigin({ a, b }: Segment): Point {
  const along = sub(b, a);
  const squared = dot(along, along);
  return squared === 0 ? a : add(a, scale(along, Math.min(1, Math.max(0, -dot(a, along) / squared))));
}

function crossings(all: readonly Edge[]): Point[] {
  const found: Point[] = [];
  for (let i = 0; i < all.length; i++) {
    for (let j = i + 1; j < all.length; j++) {
      const s = all[i] as Edge;
      const t = all[j] as Edge;
      const p = s.ring === t.ring ? null : crossing(s.a, s.b, t.a, t.b);
      if (p) found.push(p);
    }
  }
  return found;
}

function crossing(a: Point, b: Point, c: Point, d: Point): Point | null {
  const u = sub(b, a);
  const v = sub(d, c);
  const det = cross(u, v);
  if (Math.abs(det) <= 1e-12 * (dot(u, u) + dot(v, v))) return null;
  const s = cross(sub(c, a), v) / det;
  const t = cross(sub(c, a), u) / det;
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? add(a, scale(u, s)) : null;
}

/** True when two shapes, given as convex parts, share more than `by` mm in some pair of parts. */
export const overlapsBy = (a: readonly Polygon[], b: readonly Polygon[], by: number): boolean =>
  a.some((p) => b.some((q) => convexPenetration(p, q) > by));

/**
 * How far (mm) two shapes, given as convex parts, have to move apart to touch: the length of the shortest shift that
 * frees them. 0: they do not overlap. Exact up to rounding (1e-6 mm) up to 64 pairs of parts, then never too little.
 */
export function penetration(a: readonly Polygon[], b: readonly Polygon[]): number {
  const [onlyA] = a;
  const [onlyB] = b;
  if (onlyA && onlyB && a.length === 1 && b.length === 1) return Math.max(0, convexPenetration(onlyA, onlyB));
  if (!overlapsBy(a, b, NOISE)) return 0;
  for (const shortest of waysOut(forbiddenShifts(a, b))) return Math.hypot(shortest.x, shortest.y);
  return 0;
}
