import type { Polygon } from './polygon.ts';
import { add, type Point, turn } from './vec.ts';

/** A rectangle to lay many of, with the gap they keep from one another (not from what stands round them). mm. */
export interface Tile {
  readonly width: number;
  readonly depth: number;
  readonly gap: number;
}

/** Where one tile lies: its middle, and the turn of its width from the plan's x axis, degrees clockwise from 0 up to 180. */
export interface TilePlace extends Point {
  readonly turn: number;
}

/** A rectangle about the origin, clockwise. */
export function rectangle(width: number, depth: number): Polygon {
  const w = width / 2;
  const d = depth / 2;
  return [
    { x: -w, y: -d },
    { x: w, y: -d },
    { x: w, y: d },
    { x: -w, y: d },
  ];
}

/** The tile's outline on the plan, grown on all four sides by `by` mm in its own axes. */
export function tileRing(tile: Tile, place: TilePlace, by = 0): Polygon {
  return rectangle(tile.width + 2 * by, tile.depth + 2 * by).map((p) => add(place, turn(p, place.turn)));
}
