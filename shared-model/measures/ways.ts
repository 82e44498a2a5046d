import type { Polygon } from '../geometry/polygon.ts';
import { type Exemptions, noExemption } from '../geometry/separation.ts';
import { lerp, type Point } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { accessFigures } from './accessFigures.ts';
import { boundEnds, type WayEnd } from './boundEnds.ts';
import { type Chairs, type Target, targetsOf } from './targets.ts';
import { farthest, WaysField } from './waysField.ts';
import type { Bound } from './waysFronts.ts';
import { type SolvedWay, type SolveOptions, solveWaysEach } from './waysSolve.ts';

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
export interface SolveFor extends Pick<SolveOptions, 'from'> {
  /** mm: widths from here on are only known to be at least that; absent: exact whatever the width. */
  readonly limit?: number | undefined;
}

/** Solved in rounds of growing width, each only for what the one before left open. */
export function solveAll(field: WaysField, targets: readonly Target[], given: SolveFor = {}): SolvedWay[] {
  const [solved] = solveAllEach(field, targets, noExemption, given);
  return solved as SolvedWay[];
}

/** The same once for each exemption. */
export function solveAllEach(
  field: WaysField,
  targets: readonly Target[],
  exemptions: Exemptions,
  { limit, ...given }: SolveFor = {},
): SolvedWay[][] {
  const { routeWidth: shareAt, routeMeets } = accessFigures(field.scene);
  const last = limit ?? farthest(field.scene) * 2;
  const solved = exemptions.each.map(() => new Map<Target, SolvedWay>());
  let open = targets;
  for (let round = Math.min(last, limit ?? Math.max(FIRST_ROUND, shareAt)); open.length > 0; round = Math.min(last, round * 3)) {
    const options = { ...given, limit: round, shareAt: Math.min(shareAt, round), shareMeets: Math.min(routeMeets, round) };
    for (const [k, ways] of solveWaysEach(field, open, options, exemptions).entries()) {
      for (const way of ways) {
        const before = solved[k]?.get(way.target);
        if (!before || before.isCapped) solved[k]?.set(way.target, way);
      }
    }
    if (round >= last) break;
    open = open.filter((target) => solved.some((mine) => mine.get(target)?.isCapped));
  }
  return solved.map((mine) => targets.flatMap((target) => mine.get(target) ?? []));
}

export function toWay(solved: SolvedWay): Way {
  const { target, from, width, bound, isCapped, share } = solved;
  const between = bound && !isCapped ? boundEnds(bound) : [];
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
