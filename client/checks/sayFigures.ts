import { type Quantity, sayQuantity } from '#model/units/quantity.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { sayCount } from '../text/sayCount.ts';

export interface Figures {
  /** "0.70 m"; what falls below nothing is said by what is lacking: "0.08 m too little". */
  readonly measured: string;
  /** "0.711 m needed"; null: said already, or nothing to compare with. */
  readonly needed: string | null;
}

/** A finding's figures as they stand beside its message; null: it has none. */
export function sayFigures(measured: Quantity | undefined, needed: Quantity | undefined, units: LengthUnits): Figures | null {
  if (!measured) return null;
  if (needed?.unit !== measured.unit)
    return { measured: sayFigure(measured, units), needed: needed ? `${sayFigure(needed, units)} needed` : null };
  if (measured.value < 0) {
    const lacking = sayQuantity({ value: needed.value - measured.value, unit: measured.unit }, units);
    return { measured: `${lacking} too little`, needed: null };
  }
  // Materials are counted by how many stand wrong, so that none is what is asked.
  if (measured.unit === 'materials' && needed.value === 0) return { measured: `${measured.value} to move`, needed: null };
  if (needed.value === 0 && measured.value > 0) return { measured: `${sayFigure(measured, units)} too much`, needed: null };
  if (measured.unit === 'mm')
    return { measured: sayQuantity(measured, units, needed.value), needed: `${sayQuantity(needed, units)} needed` };
  const most = measured.value > needed.value;
  const wanted = measured.unit === 'share' && needed.value === 1 ? 'all of it' : sayQuantity(needed, units);
  // Children short of those enrolled are what there is enough for, not what was counted.
  const counted = sayFigure(measured, units);
  return {
    measured: measured.unit === 'children' && !most ? `for ${counted}` : counted,
    needed: most ? `at most ${wanted}` : `${wanted} needed`,
  };
}

const things = { children: ['child', 'children'], places: ['place'], mats: ['mat'], materials: ['material'], adults: ['adult'] } as const;

/** "3 mats", "1 child", "0.60 m", "60 % of it" */
function sayFigure(quantity: Quantity, units: LengthUnits): string {
  const { value, unit } = quantity;
  if (unit === 'share') return `${sayQuantity(quantity, units)} of it`;
  if (unit === 'mm' || unit === 'm2' || unit === 'kg' || unit === 'months') return sayQuantity(quantity, units);
  const [one, many] = things[unit];
  return sayCount(value, one, many);
}
