import { type PathD, type PathsD, trimCollinearD } from 'clipper2-ts';
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
