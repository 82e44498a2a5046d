import type { Part } from './parts.ts';
import { distance, type Point } from './vec.ts';

/** A line that discs come to touch from its outward side, mm. `outward` is a unit normal. */
export interface FrontLine {
  readonly a: Point;
  readonly b: Point;
  readonly outward: Point;
}

/** mm: below this a corner lies on the front's line; rounding of a turned piece is about 1e-9. */
const ON_LINE = 1e-6;

/** A part seen from a front: u along it from a, v outward (mm). */
export interface SeenPart {
  readonly part: Part;
  /** u, v of each corner in turn. */
  readonly uv: readonly number[];
  /** Where along the front the part comes nearest to it: between these every disc tangent to the front meets it soonest. */
  readonly lowFrom: number;
  readonly lowTo: number;
  /** v of that place; 0 where the part lies across the line. */
  readonly low: number;
}

export const lengthOf = (front: FrontLine): number => distance(front.a, front.b);

/** The point u along a front and v before it (mm). */
export function pointBefore(front: FrontLine, u: number, v: number): Point {
  const { a, outward } = front;
  const size = lengthOf(front);
  const along = size === 0 ? 0 : u / size;
  return { x: a.x + (front.b.x - a.x) * along + outward.x * v, y: a.y + (front.b.y - a.y) * along + outward.y * v };
}

/** Used again for each part: most that are looked at are nothing to the front. */
let work = new Float64Array(64);

/**
 * The part in the front's own axes; null when all of it lies behind the line, or where no disc up to `limit` mm that
 * touches the front within `length` mm meets it.
 */
export function seePart(front: FrontLine, part: Part, limit = Infinity, length = Infinity): SeenPart | null {
  const { a, b, outward } = front;
  const size = lengthOf(front);
  const alongX = size === 0 ? 0 : (b.x - a.x) / size;
  const alongY = size === 0 ? 0 : (b.y - a.y) / size;
  const { xy } = part;
  const n = xy.length;
  if (work.length < n) work = new Float64Array(2 * n);
  let low = Infinity;
  let high = -Infinity;
  let left = Infinity;
  let right = -Infinity;
  for (let i = 0; i < n; i += 2) {
    const x = (xy[i] as number) - a.x;
    const y = (xy[i + 1] as number) - a.y;
    const u = x * alongX + y * alongY;
    const v = x * outward.x + y * outward.y;
    work[i] = u;
    work[i + 1] = v;
    if (v < low) low = v;
    if (v > high) high = v;
    if (u < left) left = u;
    if (u > right) right = u;
  }
  if (high <= ON_LINE || low >= limit || right <= -limit / 2 || left >= length + limit / 2) return null;
  const uv = listOf(n);
  const range = low < -ON_LINE ? acrossLine(uv) : alongLowest(uv, low);
  return { part, uv, lowFrom: range[0], lowTo: range[1], low: Math.max(0, low <= ON_LINE ? 0 : low) };
}

/** The first numbers of the work. Nearly all parts have four corners or two; written out a list takes half the room. */
function listOf(n: number): number[] {
  const at = (i: number): number => work[i] as number;
  if (n === 8) return [at(0), at(1), at(2), at(3), at(4), at(5), at(6), at(7)];
  if (n === 4) return [at(0), at(1), at(2), at(3)];
  const list: number[] = [];
  for (let i = 0; i < n; i++) list.push(at(i));
  return list;
}

function alongLowest(uv: readonly number[], low: number): [number, number] {
  let from = Infinity;
  let to = -Infinity;
  for (let i = 0; i < uv.length; i += 2) {
    if ((uv[i + 1] as number) > low + ON_LINE) continue;
    from = Math.min(from, uv[i] as number);
    to = Math.max(to, uv[i] as number);
  }
  return [from, to];
}

function acrossLine(uv: readonly number[]): [number, number] {
  let from = Infinity;
  let to = -Infinity;
  for (let i = 0; i < uv.length; i += 2) {
    const k = (i + 2) % uv.length;
    const u1 = uv[i] as number;
    const v1 = uv[i + 1] as number;
    const u2 = uv[k] as number;
    const v2 = uv[k + 1] as number;
    if (v1 > 0 === v2 > 0) continue;
    const u = u1 + ((u2 - u1) * v1) / (v1 - v2);
    from = Math.min(from, u);
    to = Math.max(to, u);
  }
  return [from, to];
}

/** Diameter (mm) of the largest disc that touches the front at u and does not enter the part. */
export function tangentDiameter(seen: SeenPart, u: number): number {
  if (u >= seen.lowFrom && u <= seen.lowTo) return seen.low;
  const { uv } = seen;
  const n = uv.length;
  let least = Infinity;
  for (let i = 0; i < n; i += 2) {
    const du = (uv[i] as number) - u;
    const v = uv[i + 1] as number;
    if (v > ON_LINE) least = Math.min(least, (du * du + v * v) / v);
    if (n === 4 && i === 2) break;
    const k = i + 2 === n ? 0 : i + 2;
    const eu = (uv[k] as number) - (uv[i] as number);
    const ev = (uv[k + 1] as number) - v;
    const size = Math.sqrt(eu * eu + ev * ev);
    if (size === 0) continue;
    // Signed distance of the touching point from the edge's line, and how fast the centre draws near it.
    let off = (ev * du - eu * v) / size;
    let rate = eu / size;
    if (off < 0) {
      off = -off;
      rate = -rate;
    }
    const radius = off / (1 - rate);
    if (!(2 * radius < least)) continue;
    const foot = (-du * eu + (radius - v) * ev) / size;
    if (foot >= 0 && foot <= size) least = 2 * radius;
  }
  return least;
}

/** Between which u a disc of a diameter (mm) that touches the front enters the part; null: nowhere. */
export function blockedBetween(seen: SeenPart, diameter: number): [number, number] | null {
  if (seen.low >= diameter) return null;
  const r = diameter / 2;
  const { uv } = seen;
  const n = uv.length;
  let from = seen.lowFrom;
  let to = seen.lowTo;
  for (let i = 0; i < n; i += 2) {
    const u = uv[i] as number;
    const v = uv[i + 1] as number;
    if (v > 0 && v < diameter) {
      const half = Math.sqrt(v * (diameter - v));
      from = Math.min(from, u - half);
      to = Math.max(to, u + half);
    }
    if (n === 4 && i === 2) break;
    const k = i + 2 === n ? 0 : i + 2;
    const eu = (uv[k] as number) - u;
    const ev = (uv[k + 1] as number) - v;
    const size = Math.sqrt(eu * eu + ev * ev);
    if (Math.abs(ev) <= 1e-12 * size) continue;
    // Centres (c, r) at distance r from the edge's line, with their foot on the edge.
    for (let sign = -1; sign <= 1; sign += 2) {
      const c = u + ((r - v) * eu + sign * r * size) / ev;
      const foot = ((c - u) * eu + (r - v) * ev) / size;
      if (foot < 0 || foot > size) continue;
      from = Math.min(from, c);
      to = Math.max(to, c);
    }
  }
  return [from, to];
}
