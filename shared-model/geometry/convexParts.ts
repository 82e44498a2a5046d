import { isConvex, isSimple, type Polygon, signedArea } from './polygon.ts';
import { cross, type Point, sub } from './vec.ts';

/**
 * Convex parts, clockwise, that together make the ring: ears cut off, then joined where the join stays convex.
 * A ring that crosses itself has no inside to speak of: its hull is taken.
 */
export function convexParts(ring: Polygon): Polygon[] {
  if (isConvex(ring)) return [ring];
  if (!isSimple(ring)) return [convexHull(ring)];
  const turned = signedArea(ring) < 0 ? [...ring].reverse() : ring;
  return joined(triangles(turned));
}

/** Convex hull, clockwise on the plan, without points on its sides. */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const half = (ordered: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of ordered) {
      while (chain.length >= 2 && bend(chain[chain.length - 2] as Point, chain[chain.length - 1] as Point, p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Positive where the way a-b-c bends clockwise on the plan. */
const bend = (a: Point, b: Point, c: Point): number => cross(sub(b, a), sub(c, b));

function triangles(ring: Polygon): Point[][] {
  const rest = [...ring];
  const cut: Point[][] = [];
  while (rest.length > 3) {
    const i = earAt(rest);
    const [a, b, c] = around(rest, i);
    if (bend(a, b, c) > 0) cut.push([a, b, c]);
    rest.splice(i, 1);
  }
  cut.push(rest);
  return cut;
}

const around = (ring: readonly Point[], i: number): [Point, Point, Point] => [
  ring[(i + ring.length - 1) % ring.length] as Point,
  ring[i] as Point,
  ring[(i + 1) % ring.length] as Point,
];

function earAt(ring: readonly Point[]): number {
  for (let i = 0; i < ring.length; i++) {
    const [a, b, c] = around(ring, i);
    if (bend(a, b, c) === 0) return i; // on a straight side: nothing is cut off
    if (bend(a, b, c) > 0 && !ring.some((p) => p !== a && p !== b && p !== c && isWithin(a, b, c, p))) return i;
  }
  return 0; // rounding left no ear; any corner ends the walk
}

const isWithin = (a: Point, b: Point, c: Point, p: Point): boolean => bend(a, b, p) >= 0 && bend(b, c, p) >= 0 && bend(c, a, p) >= 0;

/** Joins parts across a shared side while the whole stays convex. */
function joined(parts: Point[][]): Point[][] {
  const list = [...parts];
  for (let i = 0; i < list.length; i++) {
    for (let j = i + 1; j < list.length; j++) {
      const whole = join(list[i] as Point[], list[j] as Point[]);
      if (!whole) continue;
      list[i] = whole;
      list.splice(j, 1);
      j = i;
    }
  }
  return list;
}

function join(a: Point[], b: Point[]): Point[] | null {
  for (let i = 0; i < a.length; i++) {
    const from = a[i] as Point;
    const to = a[(i + 1) % a.length] as Point;
    const j = b.indexOf(to);
    if (j < 0 || b[(j + 1) % b.length] !== from) continue;
    const between = Array.from({ length: b.length - 2 }, (_, k) => b[(j + 2 + k) % b.length] as Point);
    const whole = [...a.slice(0, i + 1), ...between, ...a.slice(i + 1)];
    return isConvex(whole) ? whole : null;
  }
  return null;
}
