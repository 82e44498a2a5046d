import { add, cross, distance, dot, type Point, scale, sub, turn, unit } from '#model/geometry/vec.ts';
import { toGrid } from './roomShape.ts';

export interface NextCorner {
  readonly at: Point;
  /** The walls would meet where they began. */
  readonly closes: boolean;
}

/** Degrees within which a wall is drawn into the square of the one before */
const SQUARE = 8;

/** Where the next corner goes for a pointer at p (mm): square to the walls so far, in line with the first corner, on whole centimetres. */
export function nextCorner(corners: readonly Point[], p: Point, reach: number): NextCorner {
  const first = corners[0];
  const last = corners.at(-1);
  if (!first || !last) return { at: { x: toGrid(p.x), y: toGrid(p.y) }, closes: false };
  if (corners.length >= 3 && distance(first, p) <= reach) return { at: first, closes: true };
  const before = corners.at(-2);
  const base = before ? unit(sub(last, before)) : { x: 1, y: 0 };
  const along = squareDirection(base, sub(p, last));
  if (!along) return { at: { x: toGrid(p.x), y: toGrid(p.y) }, closes: false };
  const free = toGrid(dot(sub(p, last), along));
  const inLine = dot(sub(first, last), along);
  const isInLine = corners.length >= 2 && Math.abs(inLine - free) <= reach;
  return { at: add(last, scale(along, isInLine ? inLine : free)), closes: false };
}

/** The direction square to `base` that a run nearly follows; null when it is slanted on purpose. */
function squareDirection(base: Point, run: Point): Point | null {
  const way = unit(run);
  for (const quarter of [0, 90, 180, 270]) {
    const axis = turn(base, quarter);
    if (dot(axis, way) > 0 && Math.abs(cross(axis, way)) < Math.sin((SQUARE * Math.PI) / 180)) return axis;
  }
  return null;
}

/** The corner a typed length away, turned by degrees (clockwise) from the wall before; the first wall runs to the right. */
export function typedCorner(corners: readonly Point[], length: number, turned: number): Point {
  const last = corners.at(-1) ?? { x: 0, y: 0 };
  const before = corners.at(-2);
  const ahead = before ? unit(sub(last, before)) : { x: 1, y: 0 };
  return add(last, scale(turn(ahead, before ? turned : 0), length));
}

/** mm: a typed wall that ends this near to the first corner closes the room */
const CLOSES_WITHIN = 1;

/** The corners with one more wall of a typed length (mm), turned by degrees from the last; a wall that comes back to the first corner adds none. */
export function withTypedWall(
  corners: readonly Point[],
  length: number,
  turned: number,
): { readonly corners: readonly Point[]; readonly closes: boolean } {
  const start = corners.length === 0 ? [{ x: 0, y: 0 }] : corners;
  const next = typedCorner(start, length, turned);
  const first = start[0];
  if (start.length >= 3 && first && distance(first, next) <= CLOSES_WITHIN) return { corners: start, closes: true };
  return { corners: [...start, next], closes: false };
}

/** A room as long and as wide as typed, inner faces. */
export const rectangle = (width: number, depth: number): Point[] => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: depth },
  { x: 0, y: depth },
];
