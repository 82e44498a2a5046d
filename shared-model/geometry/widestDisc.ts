import { MinHeap } from './minHeap.ts';
import type { Box } from './polygon.ts';
import type { Point } from './vec.ts';

/** After so many looks the widest so far is told. */
const MOST_LOOKS = 20_000;
/** How many squares lie along a box's longer side at first, at most. */
const MOST_ALONG = 400;

export interface WidestDisc {
  readonly center: Point;
  /** mm */
  readonly diameter: number;
}

/**
 * The widest disc in a box, to `within` mm of its diameter: squares are halved where the clearance at their middle
 * leaves room for a wider one. Stops at `enough` mm. Null: there is none.
 * @param clearance mm from a point to the nearest thing; below 0, as far as it is to the floor, where there is no floor
 * @param isAllowed a middle that counts
 */
export function widestDisc(
  box: Box,
  clearance: (p: Point) => number,
  isAllowed: (p: Point) => boolean,
  enough: number,
  within: number,
): WidestDisc | null {
  const heap = new MinHeap<{ readonly center: Point; readonly half: number }>();
  let best: WidestDisc | null = null;
  const widest = (): number => best?.diameter ?? 0;
  const look = (center: Point, half: number): void => {
    const clear = clearance(center);
    if (2 * clear > widest() && isAllowed(center)) best = { center, diameter: 2 * clear };
    const most = 2 * (clear + half * Math.SQRT2);
    if (most > widest() + within) heap.push(-most, { center, half });
  };
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const half = Math.max(1, Math.min(width, height) / 4, Math.max(width, height) / 2 / MOST_ALONG);
  for (let x = box.minX + half; x < box.maxX + half; x += 2 * half)
    for (let y = box.minY + half; y < box.maxY + half; y += 2 * half) look({ x, y }, half);
  for (let looks = 0; looks < MOST_LOOKS && widest() < enough; looks++) {
    const top = heap.pop();
    if (!top || -top.key <= widest() + within) break;
    const { center, half: side } = top.value;
    const next = side / 2;
    for (const dx of [-next, next]) for (const dy of [-next, next]) look({ x: center.x + dx, y: center.y + dy }, next);
  }
  return best;
}
