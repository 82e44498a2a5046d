import { sayDecimal } from './round.ts';

/** Writing lengths and areas as people do. Lengths come in mm, areas in m². */
export type LengthUnits = 'metric' | 'imperial';

const MM_PER_INCH = 25.4;
const SQUARE_FEET_PER_M2 = 10.76391041670972; // 1 / 0.3048²

/** "0.74 m", or whole mm ("0.912 m") within 10 mm of `near`; "2' 5 1/8\"" in imperial. */
export function sayLength(mm: number, units: LengthUnits, near?: number): string {
  if (!Number.isFinite(mm)) return 'unknown';
  if (units === 'imperial') return sayFeet(mm);
  const isClose = near !== undefined && Math.abs(mm - near) <= 10;
  const decimals = isClose || isWholeMmNeeded(mm) ? 3 : 2;
  return `${sayDecimal(mm / 1000, decimals)} m`;
}

/** 915 reads as 0.915, 1200 as 1.20: a typed figure is never rounded away. */
function isWholeMmNeeded(mm: number): boolean {
  return Number.isInteger(mm) && mm % 10 !== 0;
}

function sayFeet(mm: number): string {
  const eighths = Math.round((Math.abs(mm) / MM_PER_INCH) * 8);
  const feet = Math.floor(eighths / 96);
  const inches = Math.floor((eighths % 96) / 8);
  const rest = eighths % 8;
  const fraction = rest === 0 ? '' : ` ${sayFraction(rest)}`;
  const sign = mm < 0 ? '-' : '';
  if (feet === 0) return inches === 0 && rest > 0 ? `${sign}${sayFraction(rest)}"` : `${sign}${inches}${fraction}"`;
  return `${sign}${feet}' ${inches}${fraction}"`;
}

function sayFraction(eighths: number): string {
  if (eighths === 4) return '1/2';
  return eighths % 2 === 0 ? `${eighths / 2}/4` : `${eighths}/8`;
}

/** "43.20 m²" or "465 sq ft". */
export function sayArea(m2: number, units: LengthUnits): string {
  if (!Number.isFinite(m2)) return 'unknown';
  return units === 'imperial' ? `${sayDecimal(m2 * SQUARE_FEET_PER_M2, 0)} sq ft` : `${sayDecimal(m2, 2)} m²`;
}
