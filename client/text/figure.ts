import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';

/**
 * A length as it stands on a drawing, where the title says the unit: "0.74"; feet and inches keep their marks.
 * @param near mm that it is held against: then as fine as tells the two apart
 */
export const figure = (mm: number, units: LengthUnits, near?: number): string => sayLength(mm, units, near).replace(/ m$/, '');
