import { colours } from '#client/styles/tokens.ts';
import type { Box } from '#model/geometry/polygon.ts';
import type { Point, Segment } from '#model/geometry/vec.ts';
import { spanAlong } from '../box.ts';
import type { SnapLine } from '../snap.ts';
import type { Size } from '../viewport.ts';
import { type DimensionStyle, drawDimension } from './drawDimensions.ts';
import { NEATLINE } from './drawNeatline.ts';
import { at, type Pen, line as stroked, widthOf, write } from './pen.ts';
import type { WordBox } from './wordPlace.ts';

/** px between the neatline and the string that grows on it */
const OFF = 11;
const STYLE = { colour: colours.blue, weight: 650, size: 11, ground: colours.paper } as const;

/** px: farther than any screen reaches. */
const WIDE = 1e5;
const lettersOfNeatline: readonly WordBox[] = [
  { x0: 0, y0: 0, x1: WIDE, y1: NEATLINE.inset + NEATLINE.thick },
  { x0: 0, y0: 0, x1: NEATLINE.inset + NEATLINE.thick, y1: WIDE },
];

/** A stretch of the neatline, mm. */
interface Stretch {
  readonly way: 'across' | 'down';
  readonly from: number;
  readonly to: number;
}

/**
 * How the thing in hand lies to its neighbours, as strings on the neatline: equal gaps, the common line of two things measured
 * from the edge of the room, two widths that meet. What stands askew has its gaps drawn in place.
 */
export function drawRest(pen: Pen, lines: readonly SnapLine[], own: readonly Point[], bounds: Box): void {
  const style: DimensionStyle = { ...STYLE, taken: [...lettersOfNeatline] };
  for (const line of lines) {
    const way = wayOf(line.axis);
    if (!way) {
      for (const { along, mm } of gapsOf(line)) drawDimension(pen, at(pen, along.a), at(pen, along.b), mm, style);
      continue;
    }
    for (const stretch of stretchesOf(line, way, own, bounds)) drawStretch(pen, stretch, style);
  }
}

const gapsOf = ({ gap }: SnapLine) => (gap ? [...gap.own, ...(gap.like ? [gap.like] : [])] : []);

function wayOf(axis: Point): Stretch['way'] | null {
  if (Math.abs(axis.y) < 0.001) return 'across';
  return Math.abs(axis.x) < 0.001 ? 'down' : null;
}

function stretchesOf(line: SnapLine, way: Stretch['way'], own: readonly Point[], bounds: Box): Stretch[] {
  const on = (p: Point): number => (way === 'across' ? p.x : p.y);
  const of = ({ a, b }: Segment): Stretch => ({ way, from: Math.min(on(a), on(b)), to: Math.max(on(a), on(b)) });
  if (line.gap) return gapsOf(line).map(({ along }) => of(along));
  if (line.kind === 'wall') return [];
  const least = way === 'across' ? bounds.minX : bounds.minY;
  if (line.kind === 'aligned') return [{ way, from: least, to: on(line.a) }];
  const [from, to] = spanAlong(own, way === 'across' ? { x: 1, y: 0 } : { x: 0, y: 1 });
  return [{ way, from, to }];
}

function drawStretch(pen: Pen, { way, from, to }: Stretch, style: DimensionStyle): void {
  if ((to - from) * pen.view.k < 6) return;
  const edge = NEATLINE.inset + NEATLINE.thick + OFF;
  // The room's own strings lie where this one grows.
  pen.ctx.fillStyle = colours.paper;
  const start = at(pen, { x: from, y: from });
  const end = at(pen, { x: to, y: to });
  // Drawn backwards, so that a figure too wide for its string stands off the neatline, not on it.
  const clear = 8;
  if (way === 'across') {
    pen.ctx.fillRect(start.x - 6, edge - clear, end.x - start.x + 12, 2 * clear);
    drawDimension(pen, { x: end.x, y: edge }, { x: start.x, y: edge }, to - from, style);
    return;
  }
  pen.ctx.fillRect(edge - clear, start.y - 6, 2 * clear, end.y - start.y + 12);
  drawDimension(pen, { x: edge, y: start.y }, { x: edge, y: end.y }, to - from, style);
}

const WORDS = { size: 13, weight: 600, colour: colours.blue, align: 'left' } as const;
/** px */
const LINE = 18;
const BESIDE = 12;
const ABOVE = 5;

/** The same in words, over the foot of the drawing. They change many times a second: on the page each time would lay it out anew. */
export function drawRestWords(pen: Pen, words: string, { width, height }: Size): void {
  if (words === '') return;
  const lines = brokenAt(words, (part) => widthOf(pen, part, WORDS.size, WORDS.weight) <= width - 2 * BESIDE);
  const top = height - lines.length * LINE - 2 * ABOVE;
  pen.ctx.fillStyle = colours.paper;
  pen.ctx.fillRect(0, top, width, height - top);
  stroked(pen, { x: 0, y: top }, { x: width, y: top }, { colour: colours.blue, width: 1.2 });
  lines.forEach((part, i) => {
    write(pen, part, { x: BESIDE, y: top + ABOVE + (i + 0.5) * LINE }, WORDS);
  });
}

/** Broken between words into lines that fit. */
function brokenAt(words: string, fits: (part: string) => boolean): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
