import { closestOfParts } from '../geometry/closest.ts';
import { pointBefore } from '../geometry/frontLine.ts';
import { makePart, type Part } from '../geometry/parts.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { distance, lerp, type Point } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { accessFigures } from './accessFigures.ts';
import { type Chairs, type Target, targetsOf } from './targets.ts';
import { WaysField } from './waysField.ts';
import type { Bound } from './waysFronts.ts';
import { type SolvedWay, type SolveOptions, solveWays } from './waysSolve.ts';

/** A place on an obstacle: its id (a wall: "wall:" and the corner it starts at) and the point, mm. */
export interface WayEnd extends Point {
  readonly id: string;
}

/** How wide a disc can travel from a door to a front. */
export interface Way {
  readonly target: Target;
  /** The opening it is best reached from; null: there is no other. */
  readonly from: string | null;
  readonly to: string;
  readonly side: Side | null;
  /** mm; 0: no way at all */
  readonly width: number;
  /** mm: the same, with short pinches of the accessible route taken as open */
  readonly judged: number;
  /** 0 to 1: how much of the front a disc of the route's width covers */
  readonly share: number;
  /** The narrowest place; absent when there is no way, or when the width is only known to reach the limit. */
  readonly at: Point | null;
  readonly between: readonly WayEnd[];
  /** Where `judged` is found; as `at` and `between` where no pinch is left out. */
  readonly judgedAt: Point | null;
  readonly judgedBetween: readonly WayEnd[];
  /** True: only that the width is at least this is known (see `limit`). */
  readonly isAtLeast: boolean;
  readonly bound: Bound | null;
}

export interface WaysOptions {
  readonly extra?: readonly Polygon[];
  readonly chairs?: Chairs;
  /** mm: stop at this width; absent: exact whatever the width. */
  readonly limit?: number;
}

/** mm: the first round of an exact measurement; most ways are narrower. */
const FIRST_ROUND = 1600;

/**
 * Every way of the arrangement, in the order of the targets; none where the walls do not hold (`room.isSound`).
 * Exact to about 0.01 mm.
 */
export function measureWays(scene: Scene, options: WaysOptions = {}): Way[] {
  if (!scene.room.isSound) return [];
  const field = WaysField.of(scene, options.chairs).with(options.extra ?? []);
  return solveAll(field, targetsOf(scene, options.chairs), { limit: options.limit }).map(toWay);
}

/** What to solve, and how far. */
export interface SolveFor extends Pick<SolveOptions, 'isExempt' | 'from'> {
  /** mm: widths from here on are only known to be at least that; absent: exact whatever the width. */
  readonly limit?: number | undefined;
}

/** Solved in rounds of growing width, each only for what the one before left open. */
export function solveAll(field: WaysField, targets: readonly Target[], { limit, ...given }: SolveFor = {}): SolvedWay[] {
  const { routeWidth: shareAt, routeMeets } = accessFigures(field.scene);
  const last = limit ?? farthest(field.scene) * 2;
  const solved = new Map<Target, SolvedWay>();
  let open = targets;
  for (let round = Math.min(last, limit ?? Math.max(FIRST_ROUND, shareAt)); open.length > 0; round = Math.min(last, round * 3)) {
    const options = { ...given, limit: round, shareAt: Math.min(shareAt, round), shareMeets: Math.min(routeMeets, round) };
    for (const way of solveWays(field, open, options)) solved.set(way.target, way);
    if (round >= last) break;
    open = open.filter((target) => solved.get(target)?.isCapped);
  }
  return targets.flatMap((target) => solved.get(target) ?? []);
}

/** mm: no disc in the room is wider. */
export function farthest(scene: Scene): number {
  const { minX, minY, maxX, maxY } = boundingBox(scene.room.outline);
  return Math.hypot(maxX - minX, maxY - minY);
}

export function toWay(solved: SolvedWay): Way {
  const { target, from, width, bound, isCapped, share } = solved;
  const between = bound && !isCapped ? endsOf(bound) : [];
  const [p, q] = between;
  const at = p && q ? lerp(p, q, 0.5) : null;
  return {
    target,
    from: from?.id ?? null,
    to: target.id,
    side: target.side,
    width,
    judged: width,
    share,
    at,
    between,
    judgedAt: at,
    judgedBetween: between,
    isAtLeast: isCapped,
    bound,
  };
}

/** Both obstacles of the narrowest place, each with its point. */
export function endsOf(bound: Bound): WayEnd[] {
  switch (bound.by) {
    case 'gap': {
      const { gap, parts } = bound;
      const end = (index: number, x: number, y: number): WayEnd => ({ id: (parts[index] as Part).id, x, y });
      return [end(gap.i, gap.ax, gap.ay), end(gap.j, gap.bx, gap.by)];
    }
    case 'door': {
      const { opening } = bound.door;
      return [
        { id: opening.wall.id, ...opening.clearA },
        { id: opening.wall.id, ...opening.clearB },
      ];
    }
    case 'touch':
      return touchEnds(bound);
  }
}

/** Of the front's touching point and what else the disc touches, the two that lie farthest apart. */
function touchEnds({ line, disc, id, parts }: Extract<Bound, { by: 'touch' }>): WayEnd[] {
  const contacts: WayEnd[] = [{ id, ...pointBefore(line, disc.u, 0) }];
  const center = makePart('', [disc.center, disc.center]);
  const closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  const reach = disc.diameter / 2 + 0.01;
  for (const part of parts) {
    if (part.minX > disc.center.x + reach || part.maxX < disc.center.x - reach) continue;
    if (part.minY > disc.center.y + reach || part.maxY < disc.center.y - reach) continue;
    closestOfParts(center, part, closest);
    if (closest.distance <= reach) contacts.push({ id: part.id, x: closest.bx, y: closest.by });
  }
  let best: WayEnd[] = contacts.slice(0, 2);
  let widest = -1;
  contacts.forEach((p, i) => {
    for (const q of contacts.slice(i + 1)) {
      if (distance(p, q) <= widest + 1e-6) continue;
      widest = distance(p, q);
      best = [p, q];
    }
  });
  return best;
}
