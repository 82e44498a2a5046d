import { type Quantity, sayQuantity } from '#model/units/quantity.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';

export interface Figures {
  /** "0.70 m"; what falls below nothing is said by what is lacking: "0.08 m too little". */
  readonly measured: string;
  /** "0.711 m needed"; null: said already, or nothing to compare with. */
  readonly needed: string | null;
}

/** A finding's figures as they stand beside its message; null: it has none. */
export function sayFigures(measured: Quantity | undefined, needed: Quantity | undefined, units: LengthUnits): Figures | null {
  if (!measured) return null;
  const isSameUnit = needed?.unit === measured.unit;
  if (needed && isSameUnit && measured.value < 0) {
    const lacking = sayQuantity({ value: needed.value - measured.value, unit: measured.unit }, units);
    return { measured: `${lacking} too little`, needed: null };
  }
  const near = needed && isSameUnit ? needed.value : undefined;
  return { measured: sayQuantity(measured, units, near), needed: needed ? `${sayQuantity(needed, units)} needed` : null };
}
