import type { Scene } from '../scene/types.ts';
import { accessFigures } from './accessFigures.ts';
import { judgeNarrow, type Narrow } from './narrow.ts';
import { narrowPlaces } from './narrowPlaces.ts';
import { targetsOf } from './targets.ts';
import { solveAll, toWay, type Way } from './ways.ts';
import { WaysField } from './waysField.ts';
import { findPinches, openPinches } from './waysJudged.ts';

/** The ways of an arrangement up to the route's width, and its narrow places. */
export interface WaysMeasure {
  /** False where the walls do not hold: then there are no ways to tell of. */
  readonly isTold: boolean;
  /** In the order of the targets. Widths from the route's on are only known to be at least that. */
  readonly ways: readonly Way[];
  /** Narrowest first. */
  readonly narrow: readonly Narrow[];
  /** The same ways with every width exact; dearer, so only for who asks. */
  exact(): readonly Way[];
  /** What they were measured in, for the measurement after the next change. */
  readonly field: WaysField | null;
}

/** @param before the measurement before a change: what the change did not come near is used again; the answer is the same */
export function measureWaysAndNarrow(scene: Scene, before?: WaysMeasure): WaysMeasure {
  if (!scene.room.isSound) return { isTold: false, ways: [], narrow: [], exact: () => [], field: null };
  const figures = accessFigures(scene);
  const field = WaysField.of(scene, 'in use', before?.field);
  const targets = targetsOf(scene);
  const solved = solveAll(field, targets, { limit: figures.routeWidth });
  const places = narrowPlaces(
    field,
    figures.routeMeets,
    solved.flatMap((way) => (way.bound && way.width < figures.routeMeets ? [way.bound] : [])),
  );
  const pinches = findPinches(places, figures);
  const opened = openPinches(field, solved, pinches, figures.routeWidth);
  const ways = solved.map((way): Way => {
    const better = opened.get(way);
    if (!better) return toWay(way);
    const { at, between } = toWay(better);
    return { ...toWay(way), judged: better.width, share: better.share, judgedAt: at, judgedBetween: between };
  });
  const exact = (): readonly Way[] => {
    const open = targets.filter((_, i) => ways[i]?.isAtLeast);
    const wide = new Map(solveAll(field, open).map((way) => [way.target, toWay(way)]));
    const unbounded = solved.filter((way) => opened.get(way)?.isCapped);
    for (const [way, better] of openPinches(field, unbounded, pinches)) {
      const before = ways[solved.indexOf(way)];
      if (before) wide.set(way.target, { ...before, judged: better.width });
    }
    return ways.map((way) => wide.get(way.target) ?? way);
  };
  return { isTold: true, ways, narrow: judgeNarrow(field, places, ways, pinches, figures.routeMeets), exact, field };
}
