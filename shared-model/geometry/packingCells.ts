import { Clipper, FillRule, type Path64 } from 'clipper2-ts';
import { convexSum } from './convexSum.ts';
import type { PackingFloor } from './packingSpace.ts';
import type { Polygon } from './polygon.ts';
import { rectangle, type Tile } from './tile.ts';
import { trimmedWhole } from './trimmedRings.ts';
import { type Point, turn } from './vec.ts';

/** The boolean library counts in whole numbers: thousandths of a mm. */
const PER_MM = 1000;
/** mm taken off each side of a tile, so that what fits to the mm is not lost in rounding. Bounds only grow by it. */
const EASE = 0.01;
/** mm: smaller cells are not cut. */
const LEAST_SIZE = 0.1;

/** A box in a frame turned with the rows of tiles; mm. */
export interface FrameBox {
  readonly minU: number;
  readonly maxU: number;
  readonly minV: number;
  readonly maxV: number;
}

/**
 * Places of a tile that are looked at together: all those of one turn whose middle lies in the box. Every place of the
 * tile on its floor lies in some cell.
 */
export interface PackingCell extends FrameBox {
  /** Degrees: the frame's turn on the plan. */
  readonly frame: number;
  /** 0: the tile's width runs along u; 1: its depth. */
  readonly way: 0 | 1;
  /** Where in the box the middle may lie, in thousandths of a mm of the frame. */
  readonly middles: readonly Path64[];
}

/** Every cell of the floor, no larger than `size` (mm) either way. @param turns degrees; each also a quarter turn on */
export function packingCells(floor: PackingFloor, tile: Tile, turns: readonly number[], size: number): PackingCell[] {
  const whole = turns.flatMap((frame) => ([0, 1] as const).map((way) => wholeCell(floor, tile, frame, way)));
  // A way of which no place is free has no cell.
  return whole.filter(({ middles }) => middles.length > 0).flatMap((cell) => cut(cell, size));
}

/** The parts of a cell, no larger than `size` (mm) either way, each drawn in to where the middle may lie. */
export function cut(cell: PackingCell, size: number): PackingCell[] {
  const along = cell.maxU - cell.minU;
  const across = cell.maxV - cell.minV;
  if (Math.max(along, across) <= Math.max(size, LEAST_SIZE)) return [cell];
  const middleU = (cell.minU + cell.maxU) / 2;
  const middleV = (cell.minV + cell.maxV) / 2;
  const halves =
    along >= across
      ? [within(cell, { ...boxOf(cell), maxU: middleU }), within(cell, { ...boxOf(cell), minU: middleU })]
      : [within(cell, { ...boxOf(cell), maxV: middleV }), within(cell, { ...boxOf(cell), minV: middleV })];
  return halves.flat().flatMap((half) => cut(half, size));
}

const boxOf = ({ minU, maxU, minV, maxV }: FrameBox): FrameBox => ({ minU, maxU, minV, maxV });

function wholeCell(floor: PackingFloor, tile: Tile, frame: number, way: 0 | 1): PackingCell {
  const bare = rectangle((way === 0 ? tile.width : tile.depth) - 2 * EASE, (way === 0 ? tile.depth : tile.width) - 2 * EASE);
  const turned = (ring: Polygon): Polygon => ring.map((p) => turn(p, -frame));
  const shut = floor.obstacles.map((ring) => path(convexSum(turned(ring), bare)));
  const middles = Clipper.difference(trimmedWhole([path(turned(floor.outline))]), trimmedWhole(shut), FillRule.NonZero);
  return { ...boundsOf(middles), frame, way, middles };
}

/** The parts of the cell that lie in the box, one for each piece that hangs together. */
function within(cell: PackingCell, { minU, maxU, minV, maxV }: FrameBox): PackingCell[] {
  const ring = path([
    { x: minU, y: minV },
    { x: maxU, y: minV },
    { x: maxU, y: maxV },
    { x: minU, y: maxV },
  ]);
  const inside = Clipper.intersect([...cell.middles], [ring], FillRule.NonZero);
  const outers = inside.filter((part) => Clipper.area(part) > 0);
  const holes = inside.filter((part) => Clipper.area(part) <= 0);
  // A hole goes with every part whose box it meets: at worst it is looked at twice.
  return outers.map((outer) => {
    const box = boundsOf([outer]);
    return { ...box, frame: cell.frame, way: cell.way, middles: [outer, ...holes.filter((hole) => meets(boundsOf([hole]), box))] };
  });
}

const meets = (p: FrameBox, q: FrameBox): boolean => p.minU < q.maxU && q.minU < p.maxU && p.minV < q.maxV && q.minV < p.maxV;

function boundsOf(paths: readonly Path64[]): FrameBox {
  let minU = Infinity;
  let maxU = -Infinity;
  let minV = Infinity;
  let maxV = -Infinity;
  for (const ring of paths)
    for (const { x, y } of ring) {
      minU = Math.min(minU, x);
      maxU = Math.max(maxU, x);
      minV = Math.min(minV, y);
      maxV = Math.max(maxV, y);
    }
  return { minU: minU / PER_MM, maxU: maxU / PER_MM, minV: minV / PER_MM, maxV: maxV / PER_MM };
}

const path = (ring: Polygon): Path64 => {
  const whole = ring.map(({ x, y }) => ({ x: Math.round(x * PER_MM), y: Math.round(y * PER_MM) }));
  return Clipper.area(whole) < 0 ? whole.reverse() : whole;
};

/**
 * What every place of the cell covers, the tile grown by `by` mm on each side; null: nothing. Each side is drawn in by
 * EASE, so tiles that only touch share none of it.
 */
export function coreOf(cell: PackingCell, tile: Tile, by: number): FrameBox | null {
  const halfU = (cell.way === 0 ? tile.width : tile.depth) / 2 + by - EASE;
  const halfV = (cell.way === 0 ? tile.depth : tile.width) / 2 + by - EASE;
  const core = { minU: cell.maxU - halfU, maxU: cell.minU + halfU, minV: cell.maxV - halfV, maxV: cell.minV + halfV };
  return core.minU < core.maxU && core.minV < core.maxV ? core : null;
}

/** A box of a frame as a ring on the plan, clockwise. */
export function ringOf({ minU, maxU, minV, maxV }: FrameBox, frame: number): Polygon {
  return [
    { x: minU, y: minV },
    { x: maxU, y: minV },
    { x: maxU, y: maxV },
    { x: minU, y: maxV },
  ].map((p) => turn(p, frame));
}

/** mm: points this near the edge of a box are in it. */
const NEAR = 1e-6;

export const boxHolds = (box: FrameBox, { x, y }: Point): boolean =>
  x >= box.minU - NEAR && x <= box.maxU + NEAR && y >= box.minV - NEAR && y <= box.maxV + NEAR;

/** True where the middle of a tile may lie at this point of the cell. */
export function isMiddle({ middles }: PackingCell, { x, y }: Point): boolean {
  let isIn = false;
  for (const ring of middles) {
    let p = ring.at(-1);
    for (const q of ring) {
      if (p && p.y > y * PER_MM !== q.y > y * PER_MM && x * PER_MM < p.x + ((q.x - p.x) * (y * PER_MM - p.y)) / (q.y - p.y)) isIn = !isIn;
      p = q;
    }
  }
  return isIn;
}
