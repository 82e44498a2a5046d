import { length, type Point } from '#model/geometry/vec.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { compassWord } from '../text/compass.ts';

/** Measured by hand: to a hundredth of a metre. */
export const sayGap = (mm: number, units: LengthUnits): string => sayLength(Math.round(mm / 10) * 10, units);

const whole = (mm: number, units: LengthUnits): string => sayGap(Math.abs(mm), units);

/** "north 0.40 m"; at a slant "0.35 m west and 1.70 m north, straight" */
export function sayStraight(leg: Point, units: LengthUnits): string {
  if (Math.abs(leg.x) < 0.5 || Math.abs(leg.y) < 0.5) return `${compassWord(leg)} ${whole(length(leg), units)}`;
  return `${sayLegs(leg, units)}, straight`;
}

/** "1.12 m west and 0.50 m south", the longer one first */
export function sayLegs({ x, y }: Point, units: LengthUnits): string {
  const legs = [
    { x, y: 0 },
    { x: 0, y },
  ].filter((leg) => length(leg) >= 0.5);
  return legs
    .sort((p, q) => length(q) - length(p))
    .map((leg) => `${whole(length(leg), units)} ${compassWord(leg)}`)
    .join(' and ');
}

export function sayTurned(degrees: number): string {
  if (degrees === 0) return '';
  if (Math.abs(Math.abs(degrees) - 180) < 0.05) return 'turned half round';
  const hand = degrees > 0 ? 'to the right' : 'to the left';
  if (Math.abs(Math.abs(degrees) - 90) < 0.05) return `turned a quarter ${hand}`;
  return `turned ${Math.round(Math.abs(degrees))}° ${hand}`;
}
