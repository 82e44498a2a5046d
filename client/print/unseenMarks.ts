import type { Report } from '#model/analysis/report.ts';
import type { Scene } from '#model/scene/types.ts';
import type { UnseenPatch } from '../plan/reportParts.ts';
import { unseenToDraw } from '../plan/unseen.ts';
import { hatchOf } from './hatchLines.ts';
import { type Mark, shape, weights } from './marks.ts';
import type { PaperPen } from './paperPen.ts';

/** mm between the lines: sparser than on any shelf */
const STEP = 2.8;
const EDGE = [0.6, 0.9];

/** Floor that no adult sees, as the drawing shows it while nothing is looked at. */
export const unseenOnPaper = ({ room }: Scene, report: Report | null): readonly UnseenPatch[] =>
  unseenToDraw(report, { finding: null, isMoving: false, floor: room.area * 1e6 });

/** Hatched with sparse slanted lines inside a dotted edge: it reads in black alone. */
export function unseenMarks(pen: PaperPen, patches: readonly UnseenPatch[]): Mark[] {
  return patches.flatMap(({ outline, holes }) => {
    const [ring = [], ...bare] = [outline, ...holes].map((one) => one.map(pen.at));
    return [...hatchOf(ring, 'unseen', STEP, bare), shape(ring, { weight: weights.dimension, dash: EDGE })];
  });
}
