/** Plan axes: x right, y down, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Segment {
  readonly a: Point;
  readonly b: Point;
}

export const add = (p: Point, q: Point): Point => ({ x: p.x + q.x, y: p.y + q.y });
export const sub = (p: Point, q: Point): Point => ({ x: p.x - q.x, y: p.y - q.y });
export const scale = (p: Point, k: number): Point => ({ x: p.x * k, y: p.y * k });
export const dot = (p: Point, q: Point): number => p.x * q.x + p.y * q.y;
export const cross = (p: Point, q: Point): number => p.x * q.y - p.y * q.x;
// Not Math.hypot: it takes several times as long and leaves a list for the collector; no length here overflows a square.
export const length = (p: Point): number => Math.sqrt(p.x * p.x + p.y * p.y);
export const distance = (p: Point, q: Point): number => Math.sqrt((p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y));
export const lerp = (p: Point, q: Point, t: number): Point => ({ x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t });

/** Unit vector; the zero vector stays zero. */
export function unit(p: Point): Point {
  const l = length(p);
  return l === 0 ? p : { x: p.x / l, y: p.y / l };
}

/** Turns a vector clockwise on the plan (y down) by degrees. Right angles are exact. */
export function turn(p: Point, degrees: number): Point {
  const quarter = ((degrees % 360) + 360) % 360;
  if (quarter === 0) return { x: p.x, y: p.y };
  if (quarter === 90) return { x: -p.y, y: p.x };
  if (quarter === 180) return { x: -p.x, y: -p.y };
  if (quarter === 270) return { x: p.y, y: -p.x };
  const t = (degrees * Math.PI) / 180;
  const c = Math.cos(t);
  const s = Math.sin(t);
  return { x: p.x * c - p.y * s, y: p.x * s + p.y * c };
}

/** Inward normal of a wall or the left-hand side of a clockwise edge (y down): unit, zero for a zero edge. */
export function inwardNormal(a: Point, b: Point): Point {
  return unit({ x: -(b.y - a.y), y: b.x - a.x });
}
