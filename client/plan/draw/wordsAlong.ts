import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';

/** px between two words that do not run into each other */
const APART = { x: 44, y: 15 };

/** Where a length stands along a line on the screen, `beside` px off it, clear of words that stand there already where it can be. */
export function wordsAlong(a: Point, b: Point, beside: number, taken: readonly Point[]): Point {
  const along = unit(sub(b, a));
  const across = { x: -along.y, y: along.x };
  // Under a level line, right of an upright one.
  const off = scale(across, across.x + across.y < 0 ? -beside : beside);
  const tries = distance(a, b) < 60 ? [0.5] : [0.5, 0.38, 0.62, 0.28, 0.72];
  const places = tries.map((share) => add(lerp(a, b, share), off));
  const isFree = (p: Point): boolean => taken.every((other) => Math.abs(other.x - p.x) > APART.x || Math.abs(other.y - p.y) > APART.y);
  return places.find(isFree) ?? (places[0] as Point);
}
