import { ascendingOrder } from './ascending.ts';
import { type Closest, closestOfParts } from './closest.ts';
import type { Part } from './parts.ts';
import { Scratch } from './scratch.ts';
import { workDone } from './workDone.ts';

/** The closest pair of two parts that lie nearer than a limit, mm. */
export interface Gap {
  /** Indices of the parts. */
  readonly i: number;
  readonly j: number;
  /** 0: the parts meet. */
  readonly width: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

export const byWidth = (g: Gap, h: Gap): number => g.width - h.width;

/** Narrowest first; of two as wide, which comes first does not hang on how they were found. */
export const byWidthThenParts = (g: Gap, h: Gap): number => g.width - h.width || g.i - h.i || g.j - h.j;

/** The same gaps in that order. */
export function sortedGaps(gaps: readonly Gap[]): Gap[] {
  const at = (index: number): Gap => gaps[index] as Gap;
  const order = ascendingOrder(
    gaps.length,
    (index) => at(index).width,
    (i, j) => byWidthThenParts(at(i), at(j)) < 0,
  );
  const sorted: Gap[] = [];
  for (let k = 0; k < gaps.length; k++) sorted.push(at(order[k] as number));
  return sorted;
}

const space = new Scratch();

/** Every gap narrower than `limit` mm, in no order. A sweep along x. */
export function findGaps(parts: readonly Part[], limit: number): Gap[] {
  const gaps: Gap[] = [];
  const count = parts.length;
  const left = (index: number): number => (parts[index] as Part).minX;
  const order = ascendingOrder(count, left, (i, j) => left(i) < left(j));
  // Side by side, so that looking past the many parts that are too far up or down is quick.
  const minX = space.lengths('minX', count);
  const minY = space.lengths('minY', count);
  const maxY = space.lengths('maxY', count);
  for (let k = 0; k < count; k++) {
    const part = parts[order[k] as number] as Part;
    minX[k] = part.minX;
    minY[k] = part.minY;
    maxY[k] = part.maxY;
  }
  for (let k = 0; k < count; k++) {
    const i = order[k] as number;
    const reach = (parts[i] as Part).maxX + limit;
    const above = (minY[k] as number) - limit;
    const below = (maxY[k] as number) + limit;
    for (let m = k + 1; m < count && (minX[m] as number) <= reach; m++) {
      if ((minY[m] as number) > below || (maxY[m] as number) < above) continue;
      const j = order[m] as number;
      addGap(parts, Math.min(i, j), Math.max(i, j), limit, gaps);
    }
  }
  return gaps;
}

const scratch: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };

/** Adds the gap between two parts when it is narrower than `limit` mm. */
export function addGap(parts: readonly Part[], i: number, j: number, limit: number, gaps: Gap[]): void {
  const p = parts[i] as Part;
  const q = parts[j] as Part;
  const apartX = Math.max(p.minX - q.maxX, q.minX - p.maxX, 0);
  const apartY = Math.max(p.minY - q.maxY, q.minY - p.maxY, 0);
  if (apartX * apartX + apartY * apartY >= limit * limit) return;
  closestOfParts(p, q, scratch);
  workDone.pairs++;
  if (scratch.distance >= limit) return;
  gaps.push({ i, j, width: scratch.distance, ax: scratch.ax, ay: scratch.ay, bx: scratch.bx, by: scratch.by });
}

/** Two lists in ascending order as one. */
export function mergedGaps(p: readonly Gap[], q: readonly Gap[]): Gap[] {
  const all: Gap[] = [];
  let k = 0;
  for (const gap of p) {
    for (; k < q.length && byWidthThenParts(q[k] as Gap, gap) < 0; k++) all.push(q[k] as Gap);
    all.push(gap);
  }
  for (; k < q.length; k++) all.push(q[k] as Gap);
  return all;
}
