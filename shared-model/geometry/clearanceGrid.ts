import { type Box, boundingBox, contains, type Polygon } from './polygon.ts';
import { type Point, turn } from './vec.ts';

/** A lattice of points over a room, in a frame turned by `frame` degrees, with how far each is from what stands there. */
export interface ClearanceGrid {
  readonly frame: number;
  /** mm between points */
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
  readonly minU: number;
  readonly minV: number;
  /** mm to the nearest obstacle or wall, at most `reach`; 0 outside the room and inside obstacles. */
  readonly clear: Float64Array;
  readonly reach: number;
}

/**
 * @param outline the room, a simple ring
 * @param obstacles convex rings, or lines of two points
 * @param step mm, made larger where the room would take more than `mostPoints`
 */
export function clearanceGrid(
  outline: Polygon,
  obstacles: readonly Polygon[],
  frame: number,
  reach: number,
  step: number,
  mostPoints: number,
): ClearanceGrid {
  const ring = outline.map((p) => turn(p, -frame));
  const box = boundingBox(ring);
  const wide = box.maxX - box.minX;
  const deep = box.maxY - box.minY;
  const size = Math.max(step, Math.sqrt((wide * deep) / mostPoints));
  const columns = Math.max(1, Math.floor(wide / size));
  const rows = Math.max(1, Math.floor(deep / size));
  // Points in the middle of equal cells, so that a mirrored room gets the mirrored lattice.
  const minU = (box.minX + box.maxX - (columns - 1) * size) / 2;
  const minV = (box.minY + box.maxY - (rows - 1) * size) / 2;
  const clear = new Float64Array(columns * rows);
  for (let r = 0; r < rows; r++) {
    for (const [from, to] of crossings(ring, minV + r * size)) {
      const first = Math.max(0, Math.ceil((from - minU) / size));
      const last = Math.min(columns - 1, Math.floor((to - minU) / size));
      for (let c = first; c <= last; c++) clear[r * columns + c] = reach;
    }
  }
  const grid = { frame, step: size, columns, rows, minU, minV, clear, reach };
  for (const obstacle of obstacles)
    lower(
      grid,
      obstacle.map((p) => turn(p, -frame)),
    );
  return grid;
}

function crossings(ring: Polygon, v: number): [number, number][] {
  const us: number[] = [];
  let p = ring[ring.length - 1] as Point;
  for (const q of ring) {
    if (p.y > v !== q.y > v) us.push(p.x + ((q.x - p.x) * (v - p.y)) / (q.y - p.y));
    p = q;
  }
  us.sort((a, b) => a - b);
  return Array.from({ length: us.length >> 1 }, (_, i) => [us[2 * i] as number, us[2 * i + 1] as number]);
}

function lower({ clear, reach, columns, rows, minU, minV, step }: ClearanceGrid, ring: Polygon): void {
  const box = boundingBox(ring);
  const firstC = Math.max(0, Math.ceil((box.minX - reach - minU) / step));
  const lastC = Math.min(columns - 1, Math.floor((box.maxX + reach - minU) / step));
  const firstR = Math.max(0, Math.ceil((box.minY - reach - minV) / step));
  const lastR = Math.min(rows - 1, Math.floor((box.maxY + reach - minV) / step));
  const isBox = ring.length === 4 && ring.every((p) => (p.x === box.minX || p.x === box.maxX) && (p.y === box.minY || p.y === box.maxY));
  for (let r = firstR; r <= lastR; r++) {
    const v = minV + r * step;
    for (let c = firstC; c <= lastC; c++) {
      const at = r * columns + c;
      const known = clear[at] as number;
      if (known === 0) continue;
      const u = minU + c * step;
      const away = isBox ? distanceToBox(box, u, v) : distanceToRing(ring, u, v);
      if (away < known) clear[at] = away;
    }
  }
}

function distanceToBox({ minX, minY, maxX, maxY }: Box, u: number, v: number): number {
  const du = u < minX ? minX - u : u > maxX ? u - maxX : 0;
  const dv = v < minY ? minY - v : v > maxY ? v - maxY : 0;
  return Math.sqrt(du * du + dv * dv);
}

function distanceToRing(ring: Polygon, u: number, v: number): number {
  if (ring.length > 2 && contains(ring, { x: u, y: v })) return 0;
  let least = Infinity;
  let p = ring[ring.length - 1] as Point;
  for (const q of ring) {
    const ex = q.x - p.x;
    const ey = q.y - p.y;
    const squared = ex * ex + ey * ey;
    const share = squared === 0 ? 0 : Math.min(1, Math.max(0, ((u - p.x) * ex + (v - p.y) * ey) / squared));
    const du = u - p.x - share * ex;
    const dv = v - p.y - share * ey;
    least = Math.min(least, du * du + dv * dv);
    p = q;
  }
  return Math.sqrt(least);
}

/** The plan point of a lattice point. */
export function gridPoint(grid: ClearanceGrid, at: number): Point {
  const u = grid.minU + (at % grid.columns) * grid.step;
  const v = grid.minV + Math.floor(at / grid.columns) * grid.step;
  return turn({ x: u, y: v }, grid.frame);
}
