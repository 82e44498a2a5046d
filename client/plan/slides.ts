import type { Point } from '#model/geometry/vec.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';

/** mm a press slides what is chosen. */
const STEP = 50;

/** "0.05 m" */
export const saySlideStep = (units: LengthUnits): string => sayLength(STEP, units);

/** The four ways a press of a button slides what is chosen, mm. */
export const slidesIn = (units: LengthUnits): readonly { readonly name: string; readonly sign: string; readonly by: Point }[] => [
  { name: `Slide west ${saySlideStep(units)}`, sign: '←', by: { x: -STEP, y: 0 } },
  { name: `Slide north ${saySlideStep(units)}`, sign: '↑', by: { x: 0, y: -STEP } },
  { name: `Slide south ${saySlideStep(units)}`, sign: '↓', by: { x: 0, y: STEP } },
  { name: `Slide east ${saySlideStep(units)}`, sign: '→', by: { x: STEP, y: 0 } },
];
