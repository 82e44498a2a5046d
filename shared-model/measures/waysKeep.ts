import type { Polygon } from '../geometry/polygon.ts';
import type { Scene } from '../scene/types.ts';
import { accessFigures } from './accessFigures.ts';
import { boundEnds } from './boundEnds.ts';
import { type Target, targetsOf } from './targets.ts';
import { extraNumber, WaysField } from './waysField.ts';
import type { WaysMeasure } from './waysMeasure.ts';
import { type SolvedWay, solveWays } from './waysSolve.ts';

/** mm: a way that loses no more than this keeps its width. */
const KEPT = 1e-3;

/** A way and the width (mm) that it has to keep. */
export interface KeptWay {
  readonly target: Target;
  readonly width: number;
}

/** Says fast whether further obstacles leave every way as wide as it has to be. */
export interface WaysKeeper {
  /** Every way there is, with min(needed, its width without further obstacles). */
  readonly ways: readonly KeptWay[];
  /** True when every way keeps min(needed, its width without them), but for `slack` mm. */
  keeps(extra: readonly Polygon[], slack?: number): boolean;
  /**
   * Null where every way keeps it. Otherwise which of the obstacles stand at the narrowest places of the ways that do not,
   * those of the most ways first; none where such a place lies between other things.
   */
  inTheWay(extra: readonly Polygon[]): readonly number[] | null;
}

/**
 * @param needed mm: what a way needs at most; absent: the class's route width (its printed inches where it is the default)
 *
 * The ways without anything are measured once; each question adds only gaps and fronts near what is added.
 * Where the walls do not hold there are no ways to keep.
 */
export function waysKeeper(scene: Scene, needed: number = accessFigures(scene).routeMeets): WaysKeeper {
  if (!scene.room.isSound || needed <= 0) return none;
  const field = WaysField.of(scene);
  const present = solveWays(field, targetsOf(scene), { limit: needed, shareAt: 0, shareMeets: 0 });
  return keeperOf(
    field,
    needed,
    present.map(({ target, from, width }) => ({ target, width: from === null ? 0 : width })),
  );
}

/** The same for the class's route width, from ways that are measured already. */
export function keeperOfMeasured(scene: Scene, { field, ways }: WaysMeasure): WaysKeeper {
  const { routeWidth, routeMeets } = accessFigures(scene);
  if (!field || routeMeets <= 0) return none;
  const present = ways.map(({ target, from, width }) => ({ target, width: from === null ? 0 : Math.min(routeMeets, width) }));
  // The limit that they were measured at: what stands before each front is then known.
  return keeperOf(field, routeWidth, present);
}

const none: WaysKeeper = { ways: [], keeps: () => true, inTheWay: () => null };

/** @param limit mm: no way has to be wider */
function keeperOf(field: WaysField, limit: number, present: readonly KeptWay[]): WaysKeeper {
  const ways = present.filter(({ width }) => width > 0);
  const targets = ways.map((way) => way.target);
  const narrowed = (extra: readonly Polygon[], slack = KEPT): SolvedWay[] => {
    if (extra.length === 0 || targets.length === 0) return [];
    const now = solveWays(field.with(extra), targets, { limit, shareAt: 0, shareMeets: 0 });
    return now.filter(({ width }, i) => width < (ways[i]?.width ?? 0) - slack);
  };
  return {
    ways,
    keeps: (extra, slack) => narrowed(extra, slack).length === 0,
    inTheWay(extra) {
      const lost = narrowed(extra);
      if (lost.length === 0) return null;
      const often = new Map<number, number>();
      for (const { bound } of lost)
        for (const { id } of bound ? boundEnds(bound) : []) {
          const k = extraNumber(id);
          if (k !== null) often.set(k, (often.get(k) ?? 0) + 1);
        }
      return [...often].sort((p, q) => q[1] - p[1] || p[0] - q[0]).map(([k]) => k);
    },
  };
}
