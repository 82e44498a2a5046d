import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import { distanceToSegment } from '#model/geometry/withinRing.ts';

/** Upright box on the screen, px. */
export interface Box {
  readonly center: Point;
  readonly width: number;
  readonly height: number;
}
/** Corners of a drawn arrow, px; a single one where nothing is drawn. */
export interface Arrow {
  readonly points: readonly Point[];
}
/** What a word or a number is to stay clear of. */
export interface Taken {
  readonly names: readonly Box[];
  /** Middles of numbers. */
  readonly rounds: readonly Point[];
  readonly arrows: readonly Arrow[];
}

/** px: radius of a number */
const NUMBER = 9;

const away = (arrow: Arrow, p: Point): number =>
  Math.min(Infinity, ...arrow.points.slice(1).map((b, i) => distanceToSegment({ a: arrow.points[i] as Point, b }, p)));

/** Beside its own arrow and nearer to it than to any other; over no name, number or other arrow where that can be. */
export function lengthPlace(arrow: Arrow, { width, height }: Pick<Box, 'width' | 'height'>, taken: Taken): Box {
  const [a, b] = longestLeg(arrow);
  const along = unit(sub(b, a));
  const across = { x: -along.y, y: along.x };
  const off = (Math.abs(across.x) * width + Math.abs(across.y) * height) / 2 + 2;
  const shares = distance(a, b) < 60 ? [0.5, 0.35, 0.65] : [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
  // Under a level line, right of an upright one.
  const sides = across.x + across.y < 0 ? [-off, off] : [off, -off];
  const boxes = sides.flatMap((side, k) =>
    shares.map((share) => ({
      box: { center: add(lerp(a, b, share), scale(across, side)), width, height },
      cost: Math.abs(share - 0.5) + k * 0.2,
    })),
  );
  return cheapest(boxes.map(({ box, cost }) => ({ place: box, cost: cost + conflicts(arrow, box, taken) })));
}

function conflicts(own: Arrow, box: Box, { names, rounds, arrows }: Taken): number {
  const others = arrows.filter((arrow) => arrow !== own && arrow.points.length > 1);
  const nearer = others.filter((arrow) => away(arrow, box.center) < away(own, box.center) + 3).length;
  const crossed = others.filter((arrow) => runsThrough(arrow, box)).length;
  const hidden = names.filter((name) => meet(name, box)).length;
  const numbered = rounds.filter((p) => meet({ center: p, width: 2 * NUMBER, height: 2 * NUMBER }, box)).length;
  return 10 * (nearer + crossed) + 6 * (hidden + numbered);
}

/** At the beginning of an arrow, or as near to it as it is clear of numbers and of the names of things. */
export function roundPlace(points: readonly Point[], radius: number, { names, rounds }: Taken): Point {
  const [from, next] = points;
  if (!from) return { x: 0, y: 0 };
  const ways = Array.from({ length: 16 }, (_, i) => ({ x: Math.cos((i * Math.PI) / 8), y: Math.sin((i * Math.PI) / 8) }));
  // On the arrow itself before beside it.
  const on = next ? [8, 14, 20].map((by) => add(from, scale(unit(sub(next, from)), Math.min(by, distance(from, next) / 2)))) : [];
  const tries = [from, ...on, ...[12, 18, 24, 32, 42, 54].flatMap((by) => ways.map((way) => add(from, scale(way, by))))];
  return cheapest(
    tries.map((place) => {
      const box = { center: place, width: 2 * radius + 2, height: 2 * radius + 2 };
      const over = rounds.filter((other) => distance(other, place) <= 2 * radius + 1).length;
      return { place, cost: 100 * (over + names.filter((name) => meet(name, box)).length) + distance(from, place) };
    }),
  );
}

const meet = (p: Box, q: Box): boolean =>
  Math.abs(p.center.x - q.center.x) < (p.width + q.width) / 2 && Math.abs(p.center.y - q.center.y) < (p.height + q.height) / 2;

function runsThrough({ points }: Arrow, box: Box): boolean {
  return points.slice(1).some((b, i) => {
    const a = points[i] as Point;
    const steps = Math.max(1, Math.ceil(distance(a, b) / 3));
    return Array.from({ length: steps + 1 }, (_, k) => lerp(a, b, k / steps)).some((p) => meet({ center: p, width: 2, height: 2 }, box));
  });
}

function longestLeg({ points }: Arrow): [Point, Point] {
  let best: [Point, Point] = [points[0] as Point, points[1] ?? (points[0] as Point)];
  points.slice(1).forEach((b, i) => {
    const a = points[i] as Point;
    if (distance(a, b) > distance(...best)) best = [a, b];
  });
  return best;
}

const cheapest = <T>(tries: readonly { readonly place: T; readonly cost: number }[]): T =>
  tries.reduce((best, one) => (one.cost < best.cost ? one : best)).place;
