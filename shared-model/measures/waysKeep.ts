import type { Polygon } from '../geometry/polygon.ts';
import type { Scene } from '../scene/types.ts';
import { accessFigures } from './accessFigures.ts';
import { type Target, targetsOf } from './targets.ts';
import { WaysField } from './waysField.ts';
import { solveWays } from './waysSolve.ts';

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
  /** The fronts whose ways do not keep it. */
  lost(extra: readonly Polygon[], slack?: number): readonly Target[];
}

/**
 * @param needed mm: what a way needs at most; absent: the class's route width (its printed inches where it is the default)
 *
 * The ways without anything are measured once; each question adds only gaps and fronts near what is added.
 * Where the walls do not hold there are no ways to keep.
 */
export function waysKeeper(scene: Scene, needed: number = accessFigures(scene).routeMeets): WaysKeeper {
  if (!scene.room.isSound || needed <= 0) return { ways: [], keeps: () => true, lost: () => [] };
  const field = WaysField.of(scene);
  const options = { limit: needed, shareAt: 0, shareMeets: 0 };
  const present = solveWays(field, targetsOf(scene), options).filter((way) => way.from !== null && way.width > 0);
  const targets = present.map((way) => way.target);
  const lost = (extra: readonly Polygon[], slack = KEPT): readonly Target[] => {
    if (extra.length === 0 || targets.length === 0) return [];
    const now = solveWays(field.with(extra), targets, options);
    return targets.filter((_, i) => (now[i]?.width ?? 0) < (present[i]?.width ?? 0) - slack);
  };
  return { ways: present.map(({ target, width }) => ({ target, width })), keeps: (extra, slack) => lost(extra, slack).length === 0, lost };
}
