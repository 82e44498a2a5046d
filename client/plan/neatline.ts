import type { Box } from '#model/geometry/polygon.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';

/** mm: one bar of the neatline; a rest shorter than this has no room for its letter and belongs to the bar before it */
const BAR = 1000;
const SLIVER = 250;

export interface Bar {
  /** mm on the plan */
  readonly from: number;
  readonly to: number;
  /** "B" across, "6" down */
  readonly label: string;
  /** Every other bar is tinted. */
  readonly isTinted: boolean;
}

/** The box that the neatline frames: the room's corners. */
export const neatlineBounds = (corners: readonly Point[]): Box => boundingBox(corners);

/** 0 is "A", 25 "Z", 26 "AA". */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) letters = String.fromCharCode(65 + (rest % 26)) + letters;
  return letters;
}

/** One-metre bars across, the last as short or long as it comes. */
export const barsAcross = (bounds: Box): Bar[] => barsAlong(bounds.minX, bounds.maxX, columnLetters);

/** One-metre bars down. */
export const barsDown = (bounds: Box): Bar[] => barsAlong(bounds.minY, bounds.maxY, (row) => String(row + 1));

function barsIn(long: number): number {
  const count = Math.max(0, Math.ceil((long - 1e-6) / BAR));
  return count > 1 && long - (count - 1) * BAR < SLIVER ? count - 1 : count;
}

function barsAlong(from: number, to: number, label: (index: number) => string): Bar[] {
  const count = barsIn(to - from);
  return Array.from({ length: count }, (_, i) => ({
    from: from + i * BAR,
    to: i === count - 1 ? to : from + (i + 1) * BAR,
    label: label(i),
    isTinted: i % 2 === 0,
  }));
}

/**
 * The square of the neatline that a point (mm) lies in, as people say it: "B6".
 * A point outside takes the nearest square, so that a thing in a doorway still has a name.
 */
export function cellAt(point: Point, bounds: Box): string {
  const column = indexAlong(point.x, bounds.minX, bounds.maxX);
  const row = indexAlong(point.y, bounds.minY, bounds.maxY);
  return `${columnLetters(column)}${row + 1}`;
}

function indexAlong(at: number, from: number, to: number): number {
  const last = Math.max(0, barsIn(to - from) - 1);
  return Math.min(last, Math.max(0, Math.floor((at - from) / BAR)));
}

/** "B5", or "B5 to B7" for a thing that spans squares. */
export function cellsOf(points: readonly Point[], bounds: Box): string {
  const box = boundingBox(points);
  // A thing that ends on a bar's line does not reach into the next square.
  const first = cellAt({ x: box.minX, y: box.minY }, bounds);
  const last = cellAt({ x: box.maxX - 1, y: box.maxY - 1 }, bounds);
  return first === last ? first : `${first} to ${last}`;
}
