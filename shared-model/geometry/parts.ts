import { boundingBox, type Polygon } from './polygon.ts';
import { cross, type Point, sub } from './vec.ts';

/**
 * A convex obstacle: a solid ring, or a segment (two points). Walls and concave pieces come as segments, convex
 * pieces whole: grown by a disc they all stay convex, which is what lets gaps between pairs carry every loop.
 */
export interface Part {
  /** What people call it by: a piece's or fixture's id, or "wall:" and the corner the wall starts at. */
  readonly id: string;
  readonly ring: Polygon;
  /** x, y of each point in turn (mm). */
  readonly xy: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** A point of the part, where its links meet. */
  readonly hub: Point;
}

export function makePart(id: string, ring: Polygon): Part {
  const xy = new Float64Array(ring.length * 2);
  let sumX = 0;
  let sumY = 0;
  ring.forEach((p, i) => {
    xy[2 * i] = p.x;
    xy[2 * i + 1] = p.y;
    sumX += p.x;
    sumY += p.y;
  });
  return { id, ring, xy, ...boundingBox(ring), hub: { x: sumX / ring.length, y: sumY / ring.length } };
}

/** The convex parts of a solid ring: itself, or its edges where it is concave or crosses itself. */
export function partsOf(id: string, ring: Polygon): Part[] {
  if (isConvexRing(ring)) return [makePart(id, ring)];
  return ring.map((a, i) => makePart(id, [a, ring[(i + 1) % ring.length] as Point]));
}

/** True for a convex ring that goes round once and encloses something. */
export function isConvexRing(ring: Polygon): boolean {
  if (ring.length < 3) return false;
  let turned = 0;
  let sign = 0;
  const sides = ring.map((a, i) => sub(ring[(i + 1) % ring.length] as Point, a)).filter((e) => e.x !== 0 || e.y !== 0);
  for (let i = 0; i < sides.length; i++) {
    const e = sides[i] as Point;
    const f = sides[(i + 1) % sides.length] as Point;
    const angle = Math.atan2(cross(e, f), e.x * f.x + e.y * f.y);
    if (Math.abs(angle) > Math.PI - 1e-9) return false;
    turned += angle;
    if (Math.abs(angle) < 1e-9) continue;
    if (sign !== 0 && Math.sign(angle) !== sign) return false;
    sign = Math.sign(angle);
  }
  return sign !== 0 && Math.abs(Math.abs(turned) - 2 * Math.PI) < 1e-6;
}

/** True when p lies in a solid part or within `slack` mm of its edge line; a segment holds nothing. */
export function isInPart(part: Part, x: number, y: number, slack = 0): boolean {
  const { xy } = part;
  if (xy.length < 6) return false;
  if (x < part.minX - slack || x > part.maxX + slack || y < part.minY - slack || y > part.maxY + slack) return false;
  let ax = xy[xy.length - 2] as number;
  let ay = xy[xy.length - 1] as number;
  let sign = 0;
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number;
    const by = xy[i + 1] as number;
    const ex = bx - ax;
    const ey = by - ay;
    const side = ex * (y - ay) - ey * (x - ax);
    if (Math.abs(side) > slack * Math.hypot(ex, ey) + 1e-12) {
      if (sign !== 0 && side > 0 !== sign > 0) return false;
      sign = side;
    }
    ax = bx;
    ay = by;
  }
  return true;
}

/** mm from a point to a part; 0 in a solid one and on its edge. */
export function distanceToPart(part: Part, x: number, y: number): number {
  if (isInPart(part, x, y)) return 0;
  const { xy } = part;
  const n = xy.length;
  let least = Infinity;
  for (let i = 0; i < n; i += 2) {
    const k = i + 2 === n ? 0 : i + 2;
    const px = x - (xy[i] as number);
    const py = y - (xy[i + 1] as number);
    const ex = (xy[k] as number) - (xy[i] as number);
    const ey = (xy[k + 1] as number) - (xy[i + 1] as number);
    const square = ex * ex + ey * ey;
    const t = square === 0 ? 0 : Math.max(0, Math.min(1, (px * ex + py * ey) / square));
    const away = (px - t * ex) ** 2 + (py - t * ey) ** 2;
    if (away < least) least = away;
    if (n === 4) break;
  }
  return Math.sqrt(least);
}
