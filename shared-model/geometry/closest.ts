import { isInPart, type Part } from './parts.ts';

/** The closest pair of points of two parts: a on the first, b on the second, mm. */
export interface Closest {
  distance: number;
  ax: number;
  ay: number;
  bx: number;
  by: number;
}

/** Below this relative determinant two edges count as parallel: rounding of a turned piece is about 1e-15. */
const PARALLEL = 1e-9;

/**
 * Closest pair of two convex parts (mm), written into `out`. Parts that meet give 0 and a point they share.
 * Between parallel faces the pair stands in the middle of their overlap.
 */
export function closestOfParts(p: Part, q: Part, out: Closest): void {
  out.distance = Infinity;
  if (crossing(p, q, out)) return;
  cornersToEdges(p.xy, q.xy, false, out);
  cornersToEdges(q.xy, p.xy, true, out);
  if (out.distance > 0 && isInside(p, q, out)) return;
  if (out.distance > 0) middleOfFaces(p.xy, q.xy, out);
}

function isInside(p: Part, q: Part, out: Closest): boolean {
  const px = p.xy[0] as number;
  const py = p.xy[1] as number;
  const qx = q.xy[0] as number;
  const qy = q.xy[1] as number;
  if (isInPart(q, px, py)) return meetAt(px, py, out);
  return isInPart(p, qx, qy) && meetAt(qx, qy, out);
}

function meetAt(x: number, y: number, out: Closest): true {
  out.distance = 0;
  out.ax = x;
  out.ay = y;
  out.bx = x;
  out.by = y;
  return true;
}

/** Number of edges of a ring given as x, y pairs: one for a segment. */
const edgeCount = (xy: Float64Array): number => (xy.length === 4 ? 1 : xy.length / 2);

function crossing(p: Part, q: Part, out: Closest): boolean {
  if (p.minX > q.maxX || q.minX > p.maxX || p.minY > q.maxY || q.minY > p.maxY) return false;
  const a = p.xy;
  const b = q.xy;
  for (let i = 0; i < edgeCount(a); i++) {
    const i2 = (2 * i + 2) % a.length;
    const ax = a[2 * i] as number;
    const ay = a[2 * i + 1] as number;
    const ex = (a[i2] as number) - ax;
    const ey = (a[i2 + 1] as number) - ay;
    for (let j = 0; j < edgeCount(b); j++) {
      const j2 = (2 * j + 2) % b.length;
      const bx = b[2 * j] as number;
      const by = b[2 * j + 1] as number;
      const fx = (b[j2] as number) - bx;
      const fy = (b[j2 + 1] as number) - by;
      const det = ex * fy - ey * fx;
      if (Math.abs(det) <= PARALLEL * (Math.abs(ex) + Math.abs(ey)) * (Math.abs(fx) + Math.abs(fy))) continue;
      const s = ((bx - ax) * fy - (by - ay) * fx) / det;
      const t = ((bx - ax) * ey - (by - ay) * ex) / det;
      if (s >= 0 && s <= 1 && t >= 0 && t <= 1) return meetAt(ax + s * ex, ay + s * ey, out);
    }
  }
  return false;
}

/** Every corner of `from` against every edge of `to`; keeps the nearest. */
function cornersToEdges(from: Float64Array, to: Float64Array, isSwapped: boolean, out: Closest): void {
  let best = out.distance * out.distance;
  for (let j = 0; j < edgeCount(to); j++) {
    const j2 = (2 * j + 2) % to.length;
    const bx = to[2 * j] as number;
    const by = to[2 * j + 1] as number;
    const fx = (to[j2] as number) - bx;
    const fy = (to[j2 + 1] as number) - by;
    const ff = fx * fx + fy * fy;
    for (let i = 0; i < from.length; i += 2) {
      const x = from[i] as number;
      const y = from[i + 1] as number;
      const along = ff === 0 ? 0 : ((x - bx) * fx + (y - by) * fy) / ff;
      const t = Math.max(0, Math.min(along, 1));
      const footX = bx + t * fx;
      const footY = by + t * fy;
      const square = (x - footX) ** 2 + (y - footY) ** 2;
      if (square >= best) continue;
      best = square;
      out.ax = isSwapped ? footX : x;
      out.ay = isSwapped ? footY : y;
      out.bx = isSwapped ? x : footX;
      out.by = isSwapped ? y : footY;
    }
  }
  out.distance = Math.min(out.distance, Math.sqrt(best));
}

/** Where two faces run parallel at the closest distance, puts the pair in the middle of their overlap. */
function middleOfFaces(a: Float64Array, b: Float64Array, out: Closest): void {
  const gapX = (out.bx - out.ax) / out.distance;
  const gapY = (out.by - out.ay) / out.distance;
  const faceA = faceAcross(a, gapX, gapY, out.ax, out.ay);
  if (!faceA) return;
  const faceB = faceAcross(b, gapX, gapY, out.bx, out.by);
  if (!faceB) return;
  // Along the faces, measured from the pair found.
  const from = Math.max(faceA.from, faceB.from);
  const to = Math.min(faceA.to, faceB.to);
  if (to <= from) return;
  const shift = (from + to) / 2;
  out.ax -= gapY * shift;
  out.ay += gapX * shift;
  out.bx -= gapY * shift;
  out.by += gapX * shift;
}

/** The extent, along (-gapY, gapX) from (x, y), of the edge through (x, y) that lies square to the gap. */
function faceAcross(xy: Float64Array, gapX: number, gapY: number, x: number, y: number): { from: number; to: number } | null {
  let from = Infinity;
  let to = -Infinity;
  for (let i = 0; i < edgeCount(xy); i++) {
    const i2 = (2 * i + 2) % xy.length;
    const px = (xy[2 * i] as number) - x;
    const py = (xy[2 * i + 1] as number) - y;
    const qx = (xy[i2] as number) - x;
    const qy = (xy[i2 + 1] as number) - y;
    const along = (qy - py) * gapX - (qx - px) * gapY;
    const across = (qx - px) * gapX + (qy - py) * gapY;
    if (Math.abs(across) > PARALLEL * Math.abs(along) || Math.abs(px * gapX + py * gapY) > 1e-6) continue;
    const p = py * gapX - px * gapY;
    const q = qy * gapX - qx * gapY;
    from = Math.min(from, p, q);
    to = Math.max(to, p, q);
  }
  return from < to ? { from, to } : null;
}
