import type { Point } from '../geometry/vec.ts';
import { keptWith } from '../scene/kept.ts';
import type { Side } from '../schema/types.ts';
import { roundMm } from '../units/round.ts';
import type { Narrow } from './narrow.ts';
import type { Way } from './ways.ts';
import type { WaysMeasure } from './waysMeasure.ts';

const roundPoint = ({ x, y }: Point): Point => ({ x: roundMm(x), y: roundMm(y) });

/** The report's `ways`: those of the given ways that have a start. */
export function reportWays(ways: readonly Way[]) {
  const reported: ReportedWay[] = [];
  for (const way of ways) if (way.from !== null) reported.push(reportWay(way, way.from));
  return reported;
}

interface ReportedWay {
  readonly from: string;
  readonly to: string;
  readonly side?: Side;
  readonly width: number;
  readonly judged: number;
  readonly share: number;
  readonly at?: Point;
  readonly between: readonly { readonly id: string; readonly x: number; readonly y: number }[];
}

/** Field by field: there are hundreds at each frame of a drag. */
function reportWay({ to, side, width, judged, share, at, between }: Way, from: string): ReportedWay {
  const ends = between.map(({ id, x, y }) => ({ id, x: roundMm(x), y: roundMm(y) }));
  const figures = { width: roundMm(width), judged: roundMm(judged), share: Math.round(share * 1e6) / 1e6 };
  return { from, to, ...(side && { side }), ...figures, ...(at && { at: roundPoint(at) }), between: ends };
}

/** The report's `narrow`. */
export const reportNarrow = (measure: WaysMeasure) => measure.narrow.map(reportPlace);

/** Once for each place: most are the very objects of the step before. */
const reportPlace = keptWith(({ between, width, length, at, matters }: Narrow) => ({
  between: [...between],
  width: roundMm(width),
  length: roundMm(length),
  at: roundPoint(at),
  matters,
}));
