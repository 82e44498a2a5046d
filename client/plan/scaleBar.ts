import type { LengthUnits } from '#model/units/sayLength.ts';

const FOOT = 304.8;
/** px: shorter than this its figures would lie on one another */
const SHORTEST = 28;
const metres = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
const feet = [3, 5, 10, 20, 50, 100, 200, 500, 1000, 3000];

/** What the scale bar is long: a metre or three feet, more in a drawing seen from far. @param k px to the mm */
export function scaleLength(k: number, units: LengthUnits): { readonly px: number; readonly words: string } {
  const [counts, one, unit] = units === 'imperial' ? [feet, FOOT, "'"] : [metres, 1000, ' m'];
  const count = counts.find((many) => many * one * k >= SHORTEST) ?? (counts.at(-1) as number);
  return { px: count * one * k, words: `${count}${unit}` };
}
