import { Clipper, FillRule, type Path64 } from 'clipper2-ts';
import { convexSum } from './convexSum.ts';
import type { PackingFloor } from './packingSpace.ts';
import { contains, type Polygon } from './polygon.ts';
import { rectangle, type Tile } from './tile.ts';
import { trimmedWhole } from './trimmedRings.ts';
import { type Point, turn } from './vec.ts';

/** The boolean library counts in whole numbers: thousandths of a mm. */
const PER_MM = 1000;
/** mm taken off each side of the tile, so that what fits to the mm is not lost in rounding. The bound only grows by it. */
const EASE = 0.01;

/**
 * No more tiles than this fit, wherever they lie, at the given turns of their width (degrees; each also a quarter turn
 * on): each tile, grown by half the gap, lies in the floor that grown tiles can cover, and no two share any of it. So
 * the area of that floor over the area of one grown tile, rounded down, for each piece of it that hangs together.
 * More obstacles never raise it.
 */
export function packingBound(floor: PackingFloor, tile: Tile, turns: readonly number[]): number {
  const all = turns.flatMap((angle) => [angle, angle + 90]);
  const covered = Clipper.union(trimmedWhole(all.flatMap((angle) => coverable(floor, tile, angle))), FillRule.NonZero);
  // A tile of next to nothing: a bound beyond counting, but a number.
  const one = Math.max(1, (tile.width + tile.gap) * (tile.depth + tile.gap) * PER_MM ** 2);
  return piecesOf(covered).reduce((sum, area) => sum + Math.floor(area / one + 1e-9), 0);
}

/** Floor that grown tiles of one turn can cover, as rings that overlap: the places of their middle, and those places' edges grown. */
function coverable(floor: PackingFloor, tile: Tile, angle: number): Path64[] {
  const bare = rectangle(tile.width - 2 * EASE, tile.depth - 2 * EASE).map((p) => turn(p, angle));
  const grown = rectangle(tile.width + tile.gap, tile.depth + tile.gap).map((p) => turn(p, angle));
  const shut = floor.obstacles.map((ring) => path(convexSum(ring, bare)));
  const middles = Clipper.difference(trimmedWhole([path(floor.outline)]), trimmedWhole(shut), FillRule.NonZero);
  // Each ring's own edges first: fewer lie over one another at once.
  const edges = middles.flatMap((ring) => {
    const all = ring.map((p, i) => path(convexSum([inMm(p), inMm(ring[(i + 1) % ring.length] ?? p)], grown)));
    return Clipper.union(trimmedWhole(all), FillRule.NonZero);
  });
  return [...middles, ...edges];
}

const path = (ring: Polygon): Path64 => {
  const whole = ring.map(({ x, y }) => ({ x: Math.round(x * PER_MM), y: Math.round(y * PER_MM) }));
  return Clipper.area(whole) < 0 ? whole.reverse() : whole;
};
const inMm = ({ x, y }: Point): Point => ({ x: x / PER_MM, y: y / PER_MM });

/** Areas of the pieces that hang together, each less its holes. A hole that no piece is found for takes nothing off. */
function piecesOf(rings: readonly Path64[]): number[] {
  const outers = rings
    .map((ring) => ({ ring, area: Clipper.area(ring) }))
    .filter(({ area }) => area > 0)
    .sort((p, q) => p.area - q.area);
  for (const ring of rings) {
    const area = Clipper.area(ring);
    if (area >= 0) continue;
    const outer = outers.find((o) => ring.every((p) => contains(o.ring, p)));
    if (outer) outer.area += area;
  }
  return outers.map(({ area }) => area);
}
