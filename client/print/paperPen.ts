import type { Point } from '#model/geometry/vec.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import type { Measure } from './marks.ts';

/** The way from the plan (mm of the room) to paper (mm of paper). */
export interface PaperPen {
  readonly at: (p: Point) => Point;
  /** 50 for 1:50 */
  readonly scale: number;
  readonly measure: Measure;
  readonly units: LengthUnits;
  readonly isRightToLeft: boolean;
}
