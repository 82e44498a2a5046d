import type { Point } from '../geometry/vec.ts';
import { roundMm } from '../units/round.ts';
import type { Way } from './ways.ts';
import type { WaysMeasure } from './waysMeasure.ts';

const roundPoint = ({ x, y }: Point): Point => ({ x: roundMm(x), y: roundMm(y) });

/** The report's `ways`: those of the given ways that have a start. */
export function reportWays(ways: readonly Way[]) {
  return ways.flatMap((way) => {
    if (way.from === null) return [];
    return [
      {
        from: way.from,
        to: way.to,
        ...(way.side && { side: way.side }),
        width: roundMm(way.width),
        judged: roundMm(way.judged),
        share: Math.round(way.share * 1e6) / 1e6,
        ...(way.at && { at: roundPoint(way.at) }),
        between: way.between.map(({ id, x, y }) => ({ id, ...roundPoint({ x, y }) })),
      },
    ];
  });
}

/** The report's `narrow`. */
export function reportNarrow(measure: WaysMeasure) {
  return measure.narrow.map(({ between, width, length, at, matters }) => ({
    between: [...between],
    width: roundMm(width),
    length: roundMm(length),
    at: roundPoint(at),
    matters,
  }));
}
