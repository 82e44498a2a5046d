import { colours } from '#client/styles/tokens.ts';
import type { Box } from '#model/geometry/polygon.ts';
import { type Bar, barsAcross, barsDown } from '../neatline.ts';
import type { Size } from '../viewport.ts';
import { type Pen, stroke, write } from './pen.ts';

/** px: bars lie along the top and left edge of the drawing, wherever it is moved to. */
export const NEATLINE = { inset: 6, thick: 15 } as const;

export function drawNeatline(pen: Pen, bounds: Box, size: Size): void {
  const { view } = pen;
  const { inset, thick } = NEATLINE;
  // In a very large room only every second or fifth bar has its letter: none runs into the next.
  const every = [1, 2, 5].find((n) => n * 1000 * view.k > 17) ?? 10;
  for (const [i, bar] of barsAcross(bounds).entries())
    drawBar(pen, bar, { x: bar.from * view.k + view.x, y: inset }, 'across', size, i % every === 0);
  for (const [i, bar] of barsDown(bounds).entries())
    drawBar(pen, bar, { x: inset, y: bar.from * view.k + view.y }, 'down', size, i % every === 0);
  // Where the two meet nothing is written, so that no bar lies under another.
  pen.ctx.fillStyle = colours.paper;
  pen.ctx.fillRect(3, 3, inset + thick - 2, inset + thick - 2);
}

function drawBar(pen: Pen, bar: Bar, from: { x: number; y: number }, way: 'across' | 'down', size: Size, hasLabel: boolean): void {
  const long = (bar.to - bar.from) * pen.view.k;
  const { thick } = NEATLINE;
  const [width, height] = way === 'across' ? [long, thick] : [thick, long];
  if (from.x > size.width || from.y > size.height || from.x + width < 0 || from.y + height < 0) return;
  pen.ctx.fillStyle = bar.isTinted ? '#E9E2D2' : colours.leaf;
  pen.ctx.fillRect(from.x, from.y, width, height);
  pen.ctx.beginPath();
  pen.ctx.rect(from.x, from.y, width, height);
  stroke(pen, { colour: colours.pencil, width: 0.8 });
  if (!hasLabel || long < 6) return;
  write(pen, bar.label, { x: from.x + width / 2, y: from.y + height / 2 }, { size: 10, weight: 600, colour: colours.pencilText });
}
