import { FIT, MOST_TILES, type PackingSpace } from './packingSpace.ts';
import type { TilePlace } from './tile.ts';

interface Row {
  readonly way: 0 | 1;
  readonly v: number;
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/** How many rows are tried at most. */
const MOST_ROWS = 500;

/**
 * The best stack of rows: rows of either way that share no height, together as many tiles as can be had (dynamic
 * programme over where they end), at most `MOST_TILES`. Tried: rows pushed towards low v as far as
 * they go, so against something that blocks or against another row.
 */
export function packRows(space: PackingSpace): TilePlace[] {
  const rows = candidateRows(space).sort((p, q) => p.to - q.to);
  const best: number[] = [0];
  const taken: boolean[] = [];
  const before: number[] = [];
  rows.forEach((row, i) => {
    const fit = endingBy(rows, row.from + FIT, i);
    const withRow = (best[fit] as number) + row.count;
    taken.push(withRow > (best[i] as number));
    before.push(fit);
    best.push(Math.max(withRow, best[i] as number));
  });
  const places: TilePlace[] = [];
  for (let i = rows.length; i > 0 && places.length < MOST_TILES; ) {
    if (!taken[i - 1]) {
      i--;
      continue;
    }
    const { way, v } = rows[i - 1] as Row;
    const us: number[] = [];
    space.row(way, v, us);
    for (const u of us) places.push(space.place(way, u, v));
    i = before[i - 1] as number;
  }
  return places;
}

/** How many of the first n rows end no later than v. */
function endingBy(rows: readonly Row[], v: number, n: number): number {
  let low = 0;
  let high = n;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as Row).to <= v) low = middle + 1;
    else high = middle;
  }
  return low;
}

function candidateRows(space: PackingSpace): Row[] {
  const seen = new Set<number>();
  const rows: Row[] = [];
  const open: Row[] = [];
  const ask = (way: 0 | 1, v: number): void => {
    const key = Math.round(v * 1000) * 2 + way;
    if (seen.has(key) || seen.size >= MOST_ROWS) return;
    seen.add(key);
    const count = space.row(way, v);
    if (count === 0) return;
    const half = space.height[way] / 2;
    const row = { way, v, from: v - half, to: v + half, count };
    rows.push(row);
    open.push(row);
  };
  for (const way of [0, 1] as const) for (const v of space.edges(way)) ask(way, v);
  for (let i = 0; i < open.length && seen.size < MOST_ROWS; i++) {
    const { to } = open[i] as Row;
    for (const way of [0, 1] as const) ask(way, to + space.height[way] / 2);
  }
  return rows;
}
