import type { PartGrid } from './partGrid.ts';
import type { Part } from './parts.ts';
import type { Point } from './vec.ts';

/** A corner that walks may bend round: a circle of the body's radius about it, of which the part leaves a sector free. */
export interface WalkCorner {
  readonly at: Point;
  /** From the corner to its neighbours on the part. */
  readonly sides: readonly Point[];
}

/** Each corner once; without those buried in another part, which no body's centre comes near. */
export function cornersOf(parts: readonly Part[], grid: PartGrid): WalkCorner[] {
  const corners: WalkCorner[] = [];
  const seen = new Set<string>();
  for (const { ring } of parts) {
    for (const [i, at] of ring.entries()) {
      const next = ring[(i + 1) % ring.length] as Point;
      const before = ring[(i + ring.length - 1) % ring.length] as Point;
      const ends = ring.length < 3 ? [next] : [before, next];
      const key = `${at.x} ${at.y} ${ends.map((p) => `${p.x} ${p.y}`).join(' ')}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const box = { minX: at.x, minY: at.y, maxX: at.x, maxY: at.y };
      if (grid.near(box, 0).some((index) => buries(parts[index] as Part, at))) continue;
      corners.push({ at, sides: ends.map((p) => ({ x: p.x - at.x, y: p.y - at.y })) });
    }
  }
  return corners;
}

/** True when a point lies well inside a solid part (more than a thousandth of a mm). */
function buries({ ring }: Part, p: Point): boolean {
  if (ring.length < 3) return false;
  let sign = 0;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    if (Math.abs(side) <= 1e-3 * long || (sign !== 0 && side > 0 !== sign > 0)) return false;
    sign = side;
  }
  return true;
}

/** True when the part has nothing beyond the corner in this direction: the circle's arc there is part of its outline. */
export function isOutermost({ sides }: WalkCorner, nx: number, ny: number): boolean {
  for (const { x, y } of sides) if (nx * x + ny * y > 1e-9 * (Math.abs(x) + Math.abs(y))) return false;
  return true;
}

/** Round a corner: 1 clockwise on the plan (y down), -1 the other way. 0: a plain place. */
export type Sense = 1 | 0 | -1;

/** A straight piece that leaves one circle and meets the next, both of one radius; `out` and `into` are unit directions from the centres. */
export interface Tangent {
  readonly outX: number;
  readonly outY: number;
  readonly intoX: number;
  readonly intoY: number;
  readonly p: Point;
  readonly q: Point;
}

/**
 * The tangent from one circle (or place) to another, leaving and arriving in the given senses; null: there is none.
 * A place is a circle of radius 0.
 */
export function tangentBetween(from: Point, leave: Sense, to: Point, arrive: Sense, radius: number): Tangent | null {
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  if (apart < 1e-9) return null;
  const cx = (to.x - from.x) / apart;
  const cy = (to.y - from.y) / apart;
  // How far the direction of travel turns off the line of centres.
  const turn = (leave * radius - arrive * radius) / apart;
  if (Math.abs(turn) > 1) return null;
  const ahead = Math.sqrt(1 - turn * turn);
  const dx = ahead * cx - turn * cy;
  const dy = ahead * cy + turn * cx;
  const outX = leave * dy;
  const outY = -leave * dx;
  const intoX = arrive * dy;
  const intoY = -arrive * dx;
  return {
    outX,
    outY,
    intoX,
    intoY,
    p: { x: from.x + radius * outX, y: from.y + radius * outY },
    q: { x: to.x + radius * intoX, y: to.y + radius * intoY },
  };
}

/** Angle (radians) walked round a circle from one direction to another in a sense. */
export function arcBetween(fromX: number, fromY: number, toX: number, toY: number, sense: Sense): number {
  const angle = Math.atan2(fromX * toY - fromY * toX, fromX * toX + fromY * toY) * sense;
  if (angle >= 0) return angle;
  return angle > -1e-7 ? 0 : angle + 2 * Math.PI;
}
