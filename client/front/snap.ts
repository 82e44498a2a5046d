import { type MadeRoom, putAmong, type Standing } from './makeRoom.ts';

export interface Snapped {
  /** mm from the board's left end */
  readonly x: number;
  /** What it caught on: the board's end, a neighbour's edge, or the class's gap to a neighbour. */
  readonly to: 'end' | 'flush' | 'gap' | null;
  /** The neighbour it caught on. */
  readonly beside: string | null;
}

/** mm: where nothing catches, a tray comes to stand on a multiple of this. */
const GRID_MM = 5;
const TOUCH_MM = 1e-6;

export const overlaps = (a: Omit<Standing, 'id'>, b: Omit<Standing, 'id'>): boolean =>
  a.x < b.x + b.width - TOUCH_MM && b.x < a.x + a.width - TOUCH_MM;

/** Keeps a tray on its board (mm); one longer than the board starts at the left end. */
export const onBoard = (x: number, width: number, boardWidth: number): number => Math.max(0, Math.min(x, boardWidth - width));

/**
 * Where a tray dropped at x catches: the board's ends, or beside a neighbour, whichever lies nearest within `tolerance` mm
 * and overlaps nobody. Beside it means with `gap` mm between, room for the hands, also where it was let go nearer than that;
 * flush only where the gap has no room. Else the nearest 5 mm.
 */
export function snapTray(others: readonly Standing[], moving: Standing, boardWidth: number, gap: number, tolerance: number): Snapped {
  const { width } = moving;
  const rest = others.filter((other) => other.id !== moving.id);
  const isFree = (x: number): boolean =>
    x >= -TOUCH_MM && x + width <= boardWidth + TOUCH_MM && !rest.some((other) => overlaps({ x, width }, other));
  const places: Snapped[] = [0, boardWidth - width]
    .filter((x) => Math.abs(x - moving.x) <= tolerance && isFree(x))
    .map((x) => ({ x, to: 'end', beside: null }));
  for (const { id, x, width: its } of rest)
    for (const [flush, side] of [
      [x + its, 1],
      [x - width, -1],
    ] as const) {
      const apart = (moving.x - flush) * side;
      if (isFree(flush + gap * side)) {
        if (apart >= -tolerance && apart <= gap + tolerance) places.push({ x: flush + gap * side, to: 'gap', beside: id });
      } else if (Math.abs(apart) <= tolerance && isFree(flush)) places.push({ x: flush, to: 'flush', beside: id });
    }
  const away = (place: Snapped): number => Math.abs(place.x - moving.x);
  const [first, ...more] = places;
  if (!first) return { x: onBoard(Math.round(moving.x / GRID_MM) * GRID_MM, width, boardWidth), to: null, beside: null };
  return more.reduce((best, place) => (away(place) < away(best) ? place : best), first);
}

export interface Dropped extends Snapped {
  /** All trays that change place, the dropped one among them (mm). */
  readonly places: ReadonlyMap<string, number>;
  /** mm the board is too short; 0 when it fits. A tray is put down all the same, and the check says so. */
  readonly shortBy: number;
}

/** What happens when a tray is let go on a board: it catches, or the others slide along, or it overlaps. */
export function dropOnBoard(others: readonly Standing[], moving: Standing, boardWidth: number, gap: number, tolerance: number): Dropped {
  const snapped = snapTray(others, moving, boardWidth, gap, tolerance);
  const rest = others.filter((other) => other.id !== moving.id);
  const isFree = !rest.some((other) => overlaps({ x: snapped.x, width: moving.width }, other));
  if (isFree && moving.width <= boardWidth) return { ...snapped, places: new Map([[moving.id, snapped.x]]), shortBy: 0 };
  const made: MadeRoom = putAmong(rest, moving, boardWidth, gap);
  if (!made.fits) return { ...snapped, places: new Map([[moving.id, snapped.x]]), shortBy: made.shortBy };
  return { x: made.places.get(moving.id) ?? snapped.x, to: null, beside: null, places: made.places, shortBy: 0 };
}
