import { cross, type Point, type Segment, sub } from './vec.ts';

/** A closed ring of corners, last not repeated. Clockwise on the plan (y down) where it says so. */
export type Polygon = readonly Point[];

/** Signed area, mm²: positive for a ring that runs clockwise on the plan (y down). */
export function signedArea(ring: Polygon): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as Point;
    const q = ring[(i + 1) % ring.length] as Point;
    twice += p.x * q.y - q.x * p.y;
  }
  return twice / 2;
}

/** Area, mm². */
export const area = (ring: Polygon): number => Math.abs(signedArea(ring));

/** The ring, turned to run clockwise on the plan. */
export const clockwise = (ring: Polygon): Polygon => (signedArea(ring) < 0 ? [...ring].reverse() : ring);

export function edges(ring: Polygon): Segment[] {
  return ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] as Point }));
}

/** Even-odd: true inside; on the edge either answer may come. */
export function contains(ring: Polygon, p: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i] as Point;
    const b = ring[j] as Point;
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

export function centroid(ring: Polygon): Point {
  let twice = 0;
  let x = 0;
  let y = 0;
  const o = ring[0] as Point;
  for (let i = 0; i < ring.length; i++) {
    const p = sub(ring[i] as Point, o);
    const q = sub(ring[(i + 1) % ring.length] as Point, o);
    const c = cross(p, q);
    twice += c;
    x += (p.x + q.x) * c;
    y += (p.y + q.y) * c;
  }
  if (twice === 0) return o;
  return { x: o.x + x / (3 * twice), y: o.y + y / (3 * twice) };
}

/** True of a ring that turns one way, and round once: a star drawn in one line turns one way too. */
export function isConvex(ring: Polygon): boolean {
  let sign = 0;
  let run = 0;
  let first = 0;
  let flips = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    const c = ring[(i + 2) % ring.length] as Point;
    const along = Math.abs(b.x - a.x) < 1e-6 ? 0 : Math.sign(b.x - a.x);
    if (along !== 0) {
      if (run !== 0 && along !== run) flips++;
      if (first === 0) first = along;
      run = along;
    }
    const turn = cross(sub(b, a), sub(c, b));
    if (Math.abs(turn) < 1e-9) continue;
    if (sign !== 0 && Math.sign(turn) !== sign) return false;
    sign = Math.sign(turn);
  }
  return flips + (first === run ? 0 : 1) <= 2;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boundingBox(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const p of points) {
    minX = Math.min(minX, p.x);
    minY = Math.min(minY, p.y);
    maxX = Math.max(maxX, p.x);
    maxY = Math.max(maxY, p.y);
  }
  return { minX, minY, maxX, maxY };
}

/** True when two boxes overlap or touch. */
export const boxesMeet = (p: Box, q: Box): boolean => p.minX <= q.maxX && q.minX <= p.maxX && p.minY <= q.maxY && q.minY <= p.maxY;

/** The box with a margin (mm) on every side. */
export const grownBox = ({ minX, minY, maxX, maxY }: Box, by: number): Box => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});

/** True when no two edges cross or touch except neighbours at their shared corner. O(n²): rooms have few corners. */
export function isSimple(ring: Polygon): boolean {
  const all = edges(ring);
  if (all.length < 3) return false;
  for (let i = 0; i < all.length; i++) {
    for (let j = i + 1; j < all.length; j++) {
      const isNeighbour = j === i + 1 || (i === 0 && j === all.length - 1);
      if (!isNeighbour && segmentsMeet(all[i] as Segment, all[j] as Segment)) return false;
    }
  }
  return true;
}

/** True when the boxes of two segments share no point. */
const areBeside = ({ a, b }: Segment, { a: c, b: d }: Segment): boolean =>
  Math.max(a.x, b.x) < Math.min(c.x, d.x) ||
  Math.max(c.x, d.x) < Math.min(a.x, b.x) ||
  Math.max(a.y, b.y) < Math.min(c.y, d.y) ||
  Math.max(c.y, d.y) < Math.min(a.y, b.y);

/** True when two closed segments share a point. */
export function segmentsMeet(s: Segment, t: Segment): boolean {
  // On one line and apart, as the two ends of a trough: rounding alone would tell on which side of which they lie.
  if (areBeside(s, t)) return false;
  const d1 = orientation(t.a, t.b, s.a);
  const d2 = orientation(t.a, t.b, s.b);
  const d3 = orientation(s.a, s.b, t.a);
  const d4 = orientation(s.a, s.b, t.b);
  if (d1 * d2 < 0 && d3 * d4 < 0) return true;
  return (
    (d1 === 0 && isWithin(t, s.a)) || (d2 === 0 && isWithin(t, s.b)) || (d3 === 0 && isWithin(s, t.a)) || (d4 === 0 && isWithin(s, t.b))
  );
}

function orientation(a: Point, b: Point, c: Point): number {
  return Math.sign(cross(sub(b, a), sub(c, a)));
}

function isWithin(s: Segment, p: Point): boolean {
  return Math.min(s.a.x, s.b.x) <= p.x && p.x <= Math.max(s.a.x, s.b.x) && Math.min(s.a.y, s.b.y) <= p.y && p.y <= Math.max(s.a.y, s.b.y);
}
