import { type Box, clockwise, edges, type Polygon } from './polygon.ts';
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
 * The floor in a convex thing's shadow, clockwise on the plan: the side of the thing that the eye sees at the one end of
 * the reach, the other side at the other end, complete within a box that holds the eye. Of what the thing itself stands
 * on only as much as makes it one piece. Null: the eye stands within the thing, or none of the shadow lies in the box.
 */
export function shadowOf(footprint: Polygon, eye: Point, { from, to }: ShadowReach, box: Box): Polygon | null {
  if (isWithin(footprint, eye)) return null;
  const ring = clockwise(footprint);
  const first = outermost(ring, eye, 1);
  const last = outermost(ring, eye, -1);
  const count = ring.length;
  const seen = (last - first + count) % count;
  const shadow: Point[] = [];
  // From the thing itself on, its near side stands for nothing: a line across it keeps off rounding along that side.
  if (from === 1) shadow.push(ring[first] as Point, ring[last] as Point);
  else for (let k = 0; k <= seen; k++) shadow.push(outward(eye, ring[(first + k) % count] as Point, from));
  if (to <= MODEST) {
    for (let k = seen; k <= count; k++) shadow.push(outward(eye, ring[(first + k) % count] as Point, to));
    return shadow;
  }
  const far = 2 * Math.hypot(Math.max(eye.x - box.minX, box.maxX - eye.x), Math.max(eye.y - box.minY, box.maxY - eye.y));
  if (to * nearestOf(ring, eye) > far) shadow.push(...rimBeyond(eye, ring[last] as Point, ring[first] as Point, far));
  else for (let k = seen; k <= count; k++) shadow.push(outward(eye, ring[(first + k) % count] as Point, to));
  const cut = clippedToBox(shadow, box);
  return cut.length < 3 ? null : cut;
}

/** A point `times` as far from the eye. */
const outward = (eye: Point, p: Point, times: number): Point => ({
  x: eye.x + (p.x - eye.x) * times,
  y: eye.y + (p.y - eye.y) * times,
});

/** Which corner of a convex ring lies farthest round the eye: clockwise on the plan for 1, the other way for -1. */
function outermost(ring: Polygon, eye: Point, way: 1 | -1): number {
  let most = 0;
  for (let i = 1; i < ring.length; i++) {
    const p = ring[most] as Point;
    const q = ring[i] as Point;
    if (way * ((p.x - eye.x) * (q.y - eye.y) - (p.y - eye.y) * (q.x - eye.x)) > 0) most = i;
  }
  return most;
}

function nearestOf(ring: Polygon, p: Point): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++)
    least = Math.min(least, distanceToSide(ring[i] as Point, ring[i + 1 === ring.length ? 0 : i + 1] as Point, p));
  return least;
}

function isWithin(ring: Polygon, p: Point): boolean {
  let sign = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[i + 1 === ring.length ? 0 : i + 1] as Point;
    const turned = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
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

/** The far rim of an endless shadow between its two edges: what it cuts off lies more than `far` mm from the eye. */
function rimBeyond(eye: Point, one: Point, other: Point, far: number): Point[] {
  const from = unit(sub(one, eye));
  const to = unit(sub(other, eye));
  const half = unit(add(from, to));
  // Chords of at most 45 degrees at twice the distance stay beyond it.
  return [from, unit(add(from, half)), half, unit(add(half, to)), to].map((d) => add(eye, scale(d, 2 * far)));
}

/** A convex ring cut to a box. */
function clippedToBox(ring: Polygon, { minX, minY, maxX, maxY }: Box): Polygon {
  const left = cutAt(ring, (p) => p.x - minX);
  const right = cutAt(left, (p) => maxX - p.x);
  const top = cutAt(right, (p) => p.y - minY);
  return cutAt(top, (p) => maxY - p.y);
}

/** What of a convex ring lies where `inside` is not negative. */
function cutAt(ring: Polygon, inside: (p: Point) => number): Polygon {
  const kept: Point[] = [];
  let isCut = false;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as Point;
    const q = ring[i + 1 === ring.length ? 0 : i + 1] as Point;
    const s = inside(p);
    const t = inside(q);
    if (s >= 0) kept.push(p);
    else isCut = true;
    if (s >= 0 !== t >= 0) kept.push({ x: p.x + ((q.x - p.x) * s) / (s - t), y: p.y + ((q.y - p.y) * s) / (s - t) });
  }
  return isCut ? kept : ring;
}
