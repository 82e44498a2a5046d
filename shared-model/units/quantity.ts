import { sayDecimal } from './round.ts';
import { type LengthUnits, sayArea, sayLength } from './sayLength.ts';

/** A number with its unit, as findings carry it. */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}
type Unit = 'mm' | 'm2' | 'kg' | 'children' | 'places' | 'mats' | 'materials' | 'share' | 'adults' | 'months';

export const mm = (value: number): Quantity => ({ value, unit: 'mm' });
export const m2 = (value: number): Quantity => ({ value, unit: 'm2' });
export const kg = (value: number): Quantity => ({ value, unit: 'kg' });

/** A quantity as people read it. `near` (same unit): a threshold within 10 mm of which whole mm are shown. */
export function sayQuantity(quantity: Quantity, units: LengthUnits, near?: number): string {
  switch (quantity.unit) {
    case 'mm':
      return sayLength(quantity.value, units, near);
    case 'm2':
      return sayArea(quantity.value, units);
    case 'kg':
      return `${sayDecimal(quantity.value, 2)} kg`;
    case 'share':
      return `${Math.round(quantity.value * 100)} %`;
    default:
      return String(quantity.value);
  }
}
