import type { LengthUnits } from '#model/units/sayLength.ts';
import { line, type Mark, shape, weights, words } from './marks.ts';

const FOOT = 304.8;

interface Bar {
  /** mm in the room */
  readonly long: number;
  /** equal parts, black and white by turns */
  readonly parts: number;
  readonly text: string;
  /** What it measures on paper, to hold a ruler to. */
  readonly onPaper: string;
}

/** The bar of a scale: one metre, or five feet (three at 1:10); more where that would be too short to measure. */
export function barFor(scale: number, units: LengthUnits): Bar {
  const times = scale <= 100 ? 1 : 10 ** Math.ceil(Math.log10(scale / 100));
  if (units === 'imperial') {
    const feet = (scale <= 10 ? 3 : 5) * times;
    const inches = (feet * 12) / scale;
    return { long: feet * FOOT, parts: feet / times, text: `${feet}'`, onPaper: `${Number(inches.toFixed(2))}"` };
  }
  return {
    long: 1000 * times,
    parts: scale <= 20 ? 10 : 2,
    text: `${times} m`,
    onPaper: `${Number(((1000 * times) / scale).toFixed(1))} mm`,
  };
}

const HIGH = 1.3;

/** The bar from (x, y) to the right; its two ends are exact. Letters stand below it. */
export function barMarks(x: number, y: number, scale: number, units: LengthUnits): Mark[] {
  const { long, parts, text } = barFor(scale, units);
  const wide = long / scale;
  const part = wide / parts;
  const box = (from: number, to: number) => [
    { x: x + from, y },
    { x: x + to, y },
    { x: x + to, y: y + HIGH },
    { x: x + from, y: y + HIGH },
  ];
  return [
    ...Array.from({ length: Math.ceil(parts / 2) }, (_, i) => shape(box(2 * i * part, (2 * i + 1) * part), { weight: 0, fill: 'black' })),
    shape(box(0, wide), { weight: weights.hatch }),
    ...[0, wide].map((at) =>
      line(
        [
          { x: x + at, y: y - 0.7 },
          { x: x + at, y: y + HIGH + 0.4 },
        ],
        { weight: weights.dimension },
      ),
    ),
    words('0', x, y + HIGH + 1.8, { size: 2.1, align: 'middle' }),
    words(text, x + wide, y + HIGH + 1.8, { size: 2.1, align: 'middle' }),
  ];
}
