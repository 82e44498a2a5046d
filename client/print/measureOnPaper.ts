import { fonts } from '../styles/tokens.ts';
import type { Measure } from './marks.ts';

/** px: large, so that a screen's rounding of letters does not count */
const AT = 100;
const MOST_KEPT = 20_000;

/** Widths of words as this browser prints them. Without a canvas an average letter is taken. */
export function createMeasure(): Measure {
  const pen = typeof document === 'undefined' ? null : document.createElement('canvas').getContext('2d');
  const known = new Map<string, number>();
  return (text, size, weight = 400, isTitle = false) => {
    if (!pen) return averageWidth(text, size);
    const font = `${weight} ${AT}px ${isTitle ? fonts.title : fonts.control}`;
    const key = `${font}/${text}`;
    let width = known.get(key);
    if (width === undefined) {
      pen.font = font;
      width = pen.measureText(text).width;
      if (known.size > MOST_KEPT) known.clear();
      known.set(key, width);
    }
    return (width / AT) * size;
  };
}

/** mm of a text of a size (mm) whose letters nobody has measured. */
export const averageWidth: Measure = (text, size) => text.length * size * 0.56;
