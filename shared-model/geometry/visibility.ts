import { convexHull } from './convexParts.ts';
import { type Box, edges, type Polygon } from './polygon.ts';
import { add, cross, type Point, type Segment, scale, sub, unit } from './vec.ts';

/** Radians: directions nearer than this are one. */
const SAME_DIRECTION = 1e-12;
/** A shadow that reaches out no further than this many times keeps to sizes that need no cutting. */
const MODEST = 8;

/**
 * What an eye inside a simple room sees of its floor when only the walls stand in the way, clockwise on the plan.
 * Between two neighbouring corners' directions it looks at one wall alone, so each answer is where two lines cross:
 * exact but for rounding.
 */
export function visibleFloor(room: Polygon, eye: Point): Polygon {
  const walls = edges(room);
  const directions = room.map((p) => Math.atan2(p.y - eye.y, p.x - eye.x)).sort((p, q) => p - q);
  const seen: Point[] = [];
  for (let i = 0; i < directions.length; i++) {
    const from = directions[i] as number;
    const to = i + 1 < directions.length ? (directions[i + 1] as number) : (directions[0] as number) + 2 * Math.PI;
    if (to - from < SAME_DIRECTION) continue;
    const wall = nearestWall(walls, eye, (from + to) / 2);
    if (!wall) continue;
    for (const angle of [from, to]) {
      const t = alongRay(eye, angle, wall);
      if (t !== null) seen.push({ x: eye.x + t * Math.cos(angle), y: eye.y + t * Math.sin(angle) });
    }
  }
  return seen;
}

function nearestWall(walls: readonly Segment[], eye: Point, angle: number): Segment | null {
  let nearest: Segment | null = null;
  let least = Infinity;
  const d = { x: Math.cos(angle), y: Math.sin(angle) };
  for (const wall of walls) {
    const a = cross(d, sub(wall.a, eye));
    const b = cross(d, sub(wall.b, eye));
    if (a > 0 === b > 0) continue;
    const t = alongRay(eye, angle, wall);
    if (t === null || t < 0 || t >= least) continue;
    least = t;
    nearest = wall;
  }
  return nearest;
}

/** mm along a ray to the line a wall lies on; null: they run alike. */
function alongRay(eye: Point, angle: number, wall: Segment): number | null {
  const d = { x: Math.cos(angle), y: Math.sin(angle) };
  const run = sub(wall.b, wall.a);
  const turned = cross(d, run);
  return turned === 0 ? null : cross(sub(wall.a, eye), run) / turned;
}

/** How far out from the eye a thing's shadow reaches, in multiples of the thing's own distance: from 1 on, or further out. */
export interface ShadowReach {
  readonly from: number;
  /** Infinity: without end */
  readonly to: number;
}

/**
 * The shadow of a thing `height` mm high for what is `head` mm above the floor and looked at from `eye` mm; null: it
 * hides nothing. A line from the eye to a head s times as far as the thing passes over it at eye + (head - eye) / s.
 */
export function shadowReach(eye: number, head: number, height: number): ShadowReach | null {
  if (height <= Math.min(eye, head)) return null;
  if (eye > head) return { from: 1, to: height >= eye ? Infinity : (eye - head) / (eye - height) };
  if (height >= head) return eye === head && height === head ? null : { from: 1, to: Infinity };
  return { from: (head - eye) / (height - eye), to: Infinity };
}

/**
 * The floor in a convex thing's shadow: hull of the thing at both ends of the reach, complete within a box that holds
 * the eye. Null: the eye stands within the thing, or none of the shadow lies in the box.
 */
export function shadowOf(footprint: Polygon, eye: Point, { from, to }: ShadowReach, box: Box): Polygon | null {
  if (isWithin(footprint, eye)) return null;
  const near = footprint.map((p) => add(eye, scale(sub(p, eye), from)));
  const far = 2 * Math.max(...[box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => Math.hypot(x - eye.x, y - eye.y))));
  const isEndless = to > MODEST && to * nearestOf(footprint, eye) > far;
  const ends = isEndless ? rimBeyond(footprint, eye, far) : footprint.map((p) => add(eye, scale(sub(p, eye), to)));
  const hull = convexHull([...near, ...ends]);
  const shadow = to > MODEST ? clippedToBox(hull, box) : hull;
  return shadow.length < 3 ? null : shadow;
}

const nearestOf = (ring: Polygon, p: Point): number => Math.min(...edges(ring).map(({ a, b }) => distanceToSide(a, b, p)));

function isWithin(ring: Polygon, p: Point): boolean {
  let sign = 0;
  for (const { a, b } of edges(ring)) {
    const turned = cross(sub(b, a), sub(p, a));
    if (Math.abs(turned) <= 1e-6 * Math.hypot(b.x - a.x, b.y - a.y)) continue;
    if (sign !== 0 && turned > 0 !== sign > 0) return false;
    sign = turned;
  }
  return true;
}

function distanceToSide(a: Point, b: Point, p: Point): number {
  const run = sub(b, a);
  const square = run.x * run.x + run.y * run.y;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * run.x + (p.y - a.y) * run.y) / square));
  return Math.hypot(a.x + t * run.x - p.x, a.y + t * run.y - p.y);
}

/** Points in the endless shadow such that their hull with the thing holds all of it within `far` mm of the eye. */
function rimBeyond(footprint: Polygon, eye: Point, far: number): Point[] {
  let left = unit(sub(footprint[0] as Point, eye));
  let right = left;
  for (const p of footprint) {
    const d = unit(sub(p, eye));
    if (cross(left, d) < 0) left = d;
    if (cross(right, d) > 0) right = d;
  }
  const half = unit(add(left, right));
  // Chords of at most 45 degrees at twice the distance stay beyond it.
  return [left, unit(add(left, half)), half, unit(add(half, right)), right].map((d) => add(eye, scale(d, 2 * far)));
}

/** A convex ring cut to a box. */
function clippedToBox(ring: Polygon, { minX, minY, maxX, maxY }: Box): Polygon {
  const cut = (points: Polygon, inside: (p: Point) => number): Polygon =>
    points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length] as Point;
      const [s, t] = [inside(p), inside(q)];
      const kept = s >= 0 ? [p] : [];
      if (s >= 0 === t >= 0) return kept;
      return [...kept, add(p, scale(sub(q, p), s / (s - t)))];
    });
  const left = cut(ring, (p) => p.x - minX);
  const right = cut(left, (p) => maxX - p.x);
  const top = cut(right, (p) => p.y - minY);
  return cut(top, (p) => maxY - p.y);
}
