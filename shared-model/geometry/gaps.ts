import { type Closest, closestOfParts } from './closest.ts';
import { PartGrid } from './partGrid.ts';
import type { Part } from './parts.ts';
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

/** As `findGaps` followed by a sort by width leaves them. */
export const byWidthThenParts = (g: Gap, h: Gap): number => g.width - h.width || g.i - h.i || g.j - h.j;

/** Every gap narrower than `limit` mm, in no order. */
export function findGaps(parts: readonly Part[], limit: number, grid = new PartGrid(parts)): Gap[] {
  const gaps: Gap[] = [];
  parts.forEach((part, i) => {
    for (const j of grid.near(part, limit)) if (j > i) addGap(parts, i, j, limit, gaps);
  });
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
