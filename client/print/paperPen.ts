import type { Point } from '#model/geometry/vec.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
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

/** A length as it stands on a drawing, where the title says the unit: "0.74"; feet and inches keep their marks. */
export const figure = (mm: number, units: LengthUnits): string => sayLength(mm, units).replace(/ m$/, '');
