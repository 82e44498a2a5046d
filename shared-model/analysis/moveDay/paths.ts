import { convexHull } from '../../geometry/convexParts.ts';
import { overlapsBy } from '../../geometry/penetration.ts';
import { boundingBox, boxesMeet, edges, grownBox, type Polygon } from '../../geometry/polygon.ts';
import { add, distance, dot, length, type Point, scale, sub, unit } from '../../geometry/vec.ts';
import { distanceToSegment, reachesOutside } from '../../geometry/withinRing.ts';
import { boxOf, cachedParts, canClash } from '../../measures/overlaps.ts';
import type { SceneBody, SceneRoom, SceneWall } from '../../scene/types.ts';
import { TOUCHING } from './practice.ts';

/** How a piece gets from its place to the next. */
export type MovePath =
  /** Along the floor, straight or round one corner; mm along x and y. */
  | { readonly how: 'slide'; readonly legs: readonly Point[] }
  /** On its spot. */
  | { readonly how: 'turn' }
  | { readonly how: 'carry'; readonly by: Point };

/** mm */
const ROUNDING = 1e-6;
/** mm that a piece may stick into its wall, as drawn */
const WITHIN = 100;

const partsOf = cachedParts();

/**
 * Slid where the floor it sweeps is free: straight, else along and then across, or across and then along. Turned where it
 * stays on its spot, carried otherwise.
 */
export function pathOf(from: SceneBody, to: SceneBody, standing: readonly SceneBody[], room: SceneRoom): MovePath {
  const by = sub(to.center, from.center);
  const turned = Math.abs((((to.rotation - from.rotation) % 360) + 360) % 360);
  const isTurned = turned > 0.05 && turned < 359.95;
  if (isTurned) return length(by) < 0.5 * Math.min(to.width, to.depth) ? { how: 'turn' } : { how: 'carry', by };
  const along = { x: by.x, y: 0 };
  const across = { x: 0, y: by.y };
  const isSquare = Math.abs(by.x) < 0.5 || Math.abs(by.y) < 0.5;
  const ways = isSquare ? [[by]] : [[by], [along, across], [across, along]];
  const free = ways.find((legs) => isFree(from, legs, standing, room));
  return free ? { how: 'slide', legs: free } : { how: 'carry', by };
}

function isFree(body: SceneBody, legs: readonly Point[], standing: readonly SceneBody[], room: SceneRoom): boolean {
  let start: readonly Polygon[] = partsOf(body);
  // What is drawn into the wall comes out of it along the floor all the same.
  const isHeld = room.isSound && !reachesOutside(room.outline, start, TOUCHING);
  for (const leg of legs) {
    const swept = start.map((part) => convexHull([...part, ...part.map((p) => add(p, leg))]));
    if (isHeld && reachesOutside(room.outline, swept, TOUCHING)) return false;
    const box = boundingBox(swept.flat());
    const isHit = standing.some(
      (other) => canClash(body, other) && boxesMeet(box, boxOf(other)) && overlapsBy(swept, partsOf(other), TOUCHING),
    );
    if (isHit) return false;
    start = start.map((part) => part.map((p) => add(p, leg)));
  }
  return true;
}

/** What a piece comes to stand by: a wall, by its id, or another piece. */
export interface StandsBy {
  readonly kind: 'wall' | 'piece';
  readonly id: string;
  /** mm between the two */
  readonly gap: number;
}

/** mm: further away nothing is named */
const NEAR = 1500;
/** How squarely something lies ahead: cosine. */
const AHEAD = 0.7;

/** The nearest thing that a person can measure to: ahead of a slide, else on any side, walls first where they are as near. */
export function standsBy(body: SceneBody, standing: readonly SceneBody[], room: SceneRoom, ahead: Point | null): StandsBy | null {
  const isAhead = (p: Point): boolean => ahead === null || dot(unit(sub(p, body.center)), unit(ahead)) > 0;
  const around = grownBox(boxOf(body), NEAR);
  const found: StandsBy[] = [];
  for (const wall of room.walls) {
    if (ahead !== null && dot(wall.inward, unit(ahead)) > -AHEAD) continue;
    const gap = squareGap(wall, body.footprint);
    if (gap !== null) found.push({ kind: 'wall', id: wall.id, gap });
  }
  for (const other of standing) {
    if (other.kind === 'rug' || !canClash(body, other) || !boxesMeet(around, boxOf(other))) continue;
    const near = nearest(body.footprint, other.footprint);
    if (isAhead(near.at) && (ahead === null || isMet(body, other, ahead))) found.push({ kind: 'piece', id: other.id, gap: near.gap });
  }
  found.sort((p, q) => p.gap - q.gap);
  const [first] = found;
  return first && first.gap <= NEAR ? first : null;
}

/** mm square to a wall, as a tape is held: of what lies before it; null: nothing does, or it lies behind it. */
function squareGap(wall: SceneWall, ring: Polygon): number | null {
  const along = unit(sub(wall.b, wall.a));
  const long = distance(wall.a, wall.b);
  let least = Infinity;
  for (const { a, b } of edges(ring)) {
    const [from, to] = [dot(sub(a, wall.a), along), dot(sub(b, wall.a), along)];
    const [off, end] = [dot(sub(a, wall.a), wall.inward), dot(sub(b, wall.a), wall.inward)];
    // The part of the edge that lies before the wall: it begins and ends where the edge does or where the wall does.
    for (const t of from === to ? [0, 1] : [0, 1, -from / (to - from), (long - from) / (to - from)]) {
      const at = from + t * (to - from);
      if (t >= 0 && t <= 1 && at >= -ROUNDING && at <= long + ROUNDING) least = Math.min(least, off + t * (end - off));
    }
  }
  return least === Infinity || least < -WITHIN ? null : Math.max(0, least);
}

/** Sliding on, the one would run into the other. */
function isMet(body: SceneBody, other: SceneBody, ahead: Point): boolean {
  const on = scale(unit(ahead), NEAR);
  const swept = partsOf(body).map((part) => convexHull([...part, ...part.map((p) => add(p, on))]));
  return overlapsBy(swept, partsOf(other), TOUCHING);
}

function nearest(p: Polygon, q: Polygon): { gap: number; at: Point } {
  let best = { gap: Infinity, at: p[0] as Point };
  for (const [corners, sides] of [
    [p, q],
    [q, p],
  ] as const)
    for (const corner of corners)
      for (const side of edges(sides)) {
        const gap = distanceToSegment(side, corner);
        if (gap < best.gap) best = { gap, at: sides === q ? middleOf(side.a, side.b, corner) : corner };
      }
  return best;
}

const middleOf = (a: Point, b: Point, near: Point): Point => (distance(a, near) < distance(b, near) ? a : b);
