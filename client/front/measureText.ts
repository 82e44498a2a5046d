import { fonts } from '../styles/tokens.ts';
import { NAME_SIZE } from './drawnSizes.ts';
import type { MeasureText } from './nameLabels.ts';

const known = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

/** Width of a name on the drawing, px. Kept, since the same names are measured at every frame of a drag. */
export const measureName: MeasureText = (text) => {
  const kept = known.get(text);
  if (kept !== undefined) return kept;
  pen ??= document.createElement('canvas').getContext('2d');
  if (!pen) return text.length * NAME_SIZE * 0.55;
  pen.font = `${NAME_SIZE}px ${fonts.control}`;
  const { width } = pen.measureText(text);
  if (known.size > 5_000) known.clear();
  known.set(text, width);
  return width;
};
