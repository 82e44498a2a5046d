import type { ClearanceGrid } from './clearanceGrid.ts';
import type { PackingSpace } from './packingSpace.ts';

/** What a lattice point costs at most: floor that is tiles all round. */
const DEAREST = 20;
/** Lattice points a side of a patch that is made dearer or cheaper as a whole. */
const PATCH = 8;

/** 1 for each lattice point that some tile could lie on. The space's rows run along the lattice. */
export function coverableGrid(space: PackingSpace, grid: ClearanceGrid): Uint8Array {
  const { columns, rows, minU, minV, step } = grid;
  const { width, depth } = space.tile;
  const across = columns + 1;
  // Corners of every rectangle that tiles of one row and span can cover, summed up afterwards.
  const edges = new Int32Array(across * (rows + 1));
  for (const way of [0, 1] as const) {
    const [long, deep] = way === 0 ? [width, depth] : [depth, width];
    for (let r = 0; r < rows; r++) {
      const v = minV + r * step;
      const spans = space.free(way, v);
      const top = Math.max(0, Math.ceil((v - deep / 2 - minV) / step));
      const bottom = Math.min(rows - 1, Math.floor((v + deep / 2 - minV) / step)) + 1;
      for (let i = 0; i < spans.length; i += 2) {
        const left = Math.max(0, Math.ceil(((spans[i] as number) - long / 2 - minU) / step));
        const right = Math.min(columns - 1, Math.floor(((spans[i + 1] as number) + long / 2 - minU) / step)) + 1;
        if (right <= left || bottom <= top) continue;
        bump(edges, top * across + left, 1);
        bump(edges, top * across + right, -1);
        bump(edges, bottom * across + left, -1);
        bump(edges, bottom * across + right, 1);
      }
    }
  }
  const covered = new Uint8Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    let run = 0;
    for (let c = 0; c < columns; c++) {
      if (r > 0) bump(edges, r * across + c, edges[(r - 1) * across + c] as number);
      run += edges[r * across + c] as number;
      covered[r * columns + c] = run > 0 ? 1 : 0;
    }
  }
  return covered;
}

const bump = (list: Int32Array, at: number, by: number): void => {
  list[at] = (list[at] as number) + by;
};

/**
 * What it costs to keep a disc (mm) free at each lattice point: from 0 to 20, the share of coverable floor in its square.
 * With `random`, patches are made up to half dearer or cheaper, so that other networks come out.
 */
export function corridorCost(covered: Uint8Array, grid: ClearanceGrid, diameter: number, random: (() => number) | null): Uint8Array {
  const { columns, rows, step } = grid;
  const across = columns + 1;
  const sums = new Int32Array(across * (rows + 1));
  for (let r = 0; r < rows; r++) {
    let run = 0;
    for (let c = 0; c < columns; c++) {
      run += covered[r * columns + c] as number;
      sums[(r + 1) * across + c + 1] = (sums[r * across + c + 1] as number) + run;
    }
  }
  const half = Math.max(1, Math.round(diameter / 2 / step));
  const full = (2 * half + 1) ** 2;
  const patches = Math.ceil(columns / PATCH);
  const factors = Float64Array.from({ length: patches * Math.ceil(rows / PATCH) }, () => (random ? 0.5 + random() : 1));
  const cost = new Uint8Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    const top = Math.max(0, r - half) * across;
    const bottom = Math.min(rows, r + half + 1) * across;
    for (let c = 0; c < columns; c++) {
      const left = Math.max(0, c - half);
      const right = Math.min(columns, c + half + 1);
      const tiles =
        (sums[bottom + right] as number) - (sums[top + right] as number) - (sums[bottom + left] as number) + (sums[top + left] as number);
      const factor = factors[Math.floor(r / PATCH) * patches + Math.floor(c / PATCH)] as number;
      cost[r * columns + c] = Math.round((DEAREST * factor * tiles) / full);
    }
  }
  return cost;
}
