import type { SceneRoom } from '#model/scene/types.ts';
import { boundingBox } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';

/** The neatline runs in bars of one metre from the room's upper left corner. */
export const BAR_MM = 1000;

/** A, B … Z, AA, AB … for the bars across. */
export function letterOf(index: number): string {
  let letters = '';
  for (let rest = index; rest >= 0; rest = Math.floor(rest / 26) - 1) letters = String.fromCharCode(65 + (rest % 26)) + letters;
  return letters;
}

export interface Neatline {
  /** mm on the plan where the first bars begin */
  readonly origin: Point;
  /** End of each bar in mm from the origin; the last one may be shorter. */
  readonly across: readonly number[];
  readonly down: readonly number[];
}

export function neatlineOf(room: Pick<SceneRoom, 'outline'>): Neatline {
  const box = boundingBox(room.outline);
  return { origin: { x: box.minX, y: box.minY }, across: bars(box.maxX - box.minX), down: bars(box.maxY - box.minY) };
}

function bars(length: number): number[] {
  const count = Math.max(1, Math.ceil(length / BAR_MM - 1e-9));
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? length : (i + 1) * BAR_MM));
}

/** How people say where something is: "B6". A point outside the room takes the nearest bar. */
export function cellAt(point: Point, room: Pick<SceneRoom, 'outline'>): string {
  const { origin, across, down } = neatlineOf(room);
  const column = clampBar(point.x - origin.x, across.length);
  const row = clampBar(point.y - origin.y, down.length);
  return `${letterOf(column)}${row + 1}`;
}

const clampBar = (mm: number, count: number): number => Math.min(count - 1, Math.max(0, Math.floor(mm / BAR_MM)));

/** "B5 to B7", or one cell when both ends lie in it. */
export function cellsBetween(a: Point, b: Point, room: Pick<SceneRoom, 'outline'>): string {
  const from = cellAt(a, room);
  const to = cellAt(b, room);
  return from === to ? from : `${from} to ${to}`;
}
