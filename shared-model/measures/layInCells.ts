import { isMiddle, type PackingCell } from '../geometry/packingCells.ts';
import { convexPenetration } from '../geometry/penetration.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { type Tile, type TilePlace, tileRing } from '../geometry/tile.ts';
import { type Point, turn } from '../geometry/vec.ts';

/** Where in its cell a tile is tried, as shares of the cell's box; and just beside a tile that lies already. */
const SHARES = [0.5, 0.02, 0.98];
/** How many tiles are put down before it is given up. */
const MOST_TRIES = 300;
/** mm that tiles may share by rounding. */
const TOUCH = 1e-6;

interface Spot {
  readonly cell: PackingCell;
  /** In the cell's frame. */
  readonly middle: Point;
  readonly place: TilePlace;
  readonly grown: Polygon;
}

/**
 * Tries to lay one tile in each cell, with the gap between them and with what else has to hold; null: it was not found.
 * @param isAllowed of tiles together; fewer tiles never break what more of them kept
 */
export function layInCells(
  cells: readonly PackingCell[],
  tile: Tile,
  isAllowed: (places: readonly TilePlace[]) => boolean,
): TilePlace[] | null {
  const order = [...cells].sort((p, q) => p.maxU - p.minU + p.maxV - p.minV - (q.maxU - q.minU + q.maxV - q.minV));
  const laid: Spot[] = [];
  let left = MOST_TRIES;
  const lay = (k: number): boolean => {
    const cell = order[k];
    if (!cell) return true;
    for (const spot of spotsIn(cell, tile, laid)) {
      if (left <= 0) return false;
      if (laid.some((other) => convexPenetration(other.grown, spot.grown) > TOUCH)) continue;
      left--;
      laid.push(spot);
      if (isAllowed(laid.map(({ place }) => place)) && lay(k + 1)) return true;
      laid.pop();
    }
    return false;
  };
  return lay(0) ? laid.map(({ place }) => place) : null;
}

function spotsIn(cell: PackingCell, tile: Tile, laid: readonly Spot[]): Spot[] {
  const { minU, maxU, minV, maxV, frame } = cell;
  const us = SHARES.map((share) => minU + share * (maxU - minU));
  const vs = SHARES.map((share) => minV + share * (maxV - minV));
  for (const { cell: other, middle } of laid) {
    if (other.frame !== frame) continue;
    const along = (spanU(cell, tile) + spanU(other, tile)) / 2;
    const across = (spanV(cell, tile) + spanV(other, tile)) / 2;
    us.push(...[middle.x - along, middle.x + along].filter((u) => u >= minU && u <= maxU));
    vs.push(...[middle.y - across, middle.y + across].filter((v) => v >= minV && v <= maxV));
  }
  return us.flatMap((x) =>
    vs.flatMap((y): Spot[] => {
      const middle = { x, y };
      if (!isMiddle(cell, middle)) return [];
      const place = { ...turn(middle, frame), turn: (frame + 90 * cell.way) % 180 };
      return [{ cell, middle, place, grown: tileRing(tile, place, tile.gap / 2) }];
    }),
  );
}

const spanU = ({ way }: PackingCell, { width, depth, gap }: Tile): number => (way === 0 ? width : depth) + gap;
const spanV = ({ way }: PackingCell, { width, depth, gap }: Tile): number => (way === 0 ? depth : width) + gap;
