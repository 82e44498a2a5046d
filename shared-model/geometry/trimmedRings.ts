import { type Path64, type PathD, type PathsD, trimCollinear, trimCollinearD } from 'clipper2-ts';
import type { Polygon } from './polygon.ts';
import type { Point } from './vec.ts';

/** Decimals of a mm that the boolean operations keep. */
export const PRECISION = 3;

/**
 * Rings for the boolean operations, without corners on a straight side and without sides that run back on themselves,
 * as rounding leaves of a sliver: the library never ends on some of those, and fails on rings of which nothing is left.
 */
export function trimmedRings(rings: readonly Polygon[], from: Point = { x: 0, y: 0 }): PathsD {
  const paths = rings.map((ring): PathD => {
    const path = ring.map(({ x, y }) => ({ x: x - from.x, y: y - from.y }));
    return trimCollinearD(path, PRECISION);
  });
  return paths.filter((path) => path.length >= 3);
}

/** The same of rings in whole numbers. */
export const trimmedWhole = (paths: readonly Path64[]): Path64[] =>
  paths.map((path) => trimCollinear(path)).filter((path) => path.length >= 3);
