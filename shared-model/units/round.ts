/** Lengths in reports go to 0.01 mm, areas to 1e-6 m². */
export const roundMm = (mm: number): number => roundTo(mm, 100);
export const roundM2 = (m2: number): number => roundTo(m2, 1e6);

/** Below this, a figure that is not nearly halfway between two is rounded in one step: findings say many at every frame of a drag. */
const PLAIN = 1e8;
const NEAR_HALF = 1e-3;

/**
 * A figure with so many decimals, as rounded by hand: half away from zero, of the decimal that is written. 11.95 is
 * "12.0" with one, although the nearest binary number lies just below it.
 */
export function sayDecimal(value: number, decimals: number): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e15) return String(value);
  const plain = Math.abs(value) * 10 ** decimals;
  const beyond = plain - Math.floor(plain);
  if (plain < PLAIN && Math.abs(beyond - 0.5) > NEAR_HALF) return signed(value, Math.round(plain) / 10 ** decimals, decimals);
  // Figures carry at most this many true decimals; what lies beyond is the noise of reckoning.
  const written = Number(Math.abs(value).toPrecision(12)).toString();
  const shifted = written.includes('e') ? Math.abs(value) * 10 ** decimals : Number(`${written}e${decimals}`);
  const rounded = Number(`${Math.round(shifted)}e-${decimals}`);
  return signed(value, rounded, decimals);
}

const signed = (value: number, rounded: number, decimals: number): string =>
  `${value < 0 && rounded !== 0 ? '-' : ''}${rounded.toFixed(decimals)}`;

function roundTo(value: number, perUnit: number): number {
  const rounded = Math.round(value * perUnit) / perUnit;
  return rounded === 0 ? 0 : rounded; // no -0 in reports
}
