import { colours, fonts } from '#client/styles/tokens.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import { figure as lengthAlone } from '../../text/figure.ts';
import { toScreen, type Viewport } from '../viewport.ts';

/** What every drawing function gets: the canvas in px, and the way from the plan to it. */
export interface Pen {
  readonly ctx: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly units: LengthUnits;
  readonly isRightToLeft: boolean;
}

export const at = (pen: Pen, p: Point): Point => toScreen(pen.view, p);

export interface Stroke {
  readonly colour?: string;
  readonly width?: number;
  readonly dash?: readonly number[];
}

export function stroke(pen: Pen, { colour = colours.ink, width = 1.1, dash = [] }: Stroke): void {
  pen.ctx.strokeStyle = colour;
  pen.ctx.lineWidth = width;
  pen.ctx.setLineDash([...dash]);
  pen.ctx.stroke();
  pen.ctx.setLineDash([]);
}

export function fill(pen: Pen, colour: string): void {
  pen.ctx.fillStyle = colour;
  pen.ctx.fill();
}

/** A path through points of the screen. */
export function path(pen: Pen, points: readonly Point[], isClosed = true): void {
  pen.ctx.beginPath();
  points.forEach((p, i) => {
    if (i === 0) pen.ctx.moveTo(p.x, p.y);
    else pen.ctx.lineTo(p.x, p.y);
  });
  if (isClosed) pen.ctx.closePath();
}

/** A path through points of the plan. */
export function planPath(pen: Pen, points: readonly Point[], isClosed = true): void {
  path(
    pen,
    points.map((p) => at(pen, p)),
    isClosed,
  );
}

export function line(pen: Pen, from: Point, to: Point, style: Stroke): void {
  path(pen, [from, to], false);
  stroke(pen, style);
}

export interface Words {
  readonly size?: number;
  readonly weight?: number;
  readonly colour?: string;
  readonly align?: CanvasTextAlign;
  readonly isItalic?: boolean;
  readonly isTitle?: boolean;
  /** radians clockwise */
  readonly angle?: number;
  /** A ground behind the words, so that hatching does not run through them. */
  readonly ground?: string;
}

/** Words centred on the line at a point of the screen. @returns their width, px */
export function write(pen: Pen, text: string, where: Point, words: Words = {}): number {
  const { size = 11, weight = 400, colour = colours.ink, align = 'center', angle = 0 } = words;
  const { ctx } = pen;
  const font = `${words.isItalic ? 'italic ' : ''}${weight} ${size}px ${words.isTitle ? fonts.title : fonts.control}`;
  ctx.font = font;
  ctx.textAlign = align;
  ctx.textBaseline = 'middle';
  // The title's letters come later than the first drawing.
  const width = words.isTitle ? ctx.measureText(text).width : measured(ctx, font, text);
  ctx.save();
  ctx.translate(where.x, where.y);
  if (angle !== 0) ctx.rotate(angle);
  if (words.ground) {
    const left = align === 'center' ? -width / 2 : align === 'right' || align === 'end' ? -width : 0;
    ctx.fillStyle = words.ground;
    ctx.fillRect(left - 3, -size / 2 - 1, width + 6, size + 2);
  }
  ctx.fillStyle = colour;
  ctx.fillText(text, 0, 0.5);
  ctx.restore();
  return width;
}

export function widthOf(pen: Pen, text: string, size: number, weight = 400): number {
  const font = `${weight} ${size}px ${fonts.control}`;
  pen.ctx.font = font;
  return measured(pen.ctx, font, text);
}

/** Widths (px) that were measured before: the same few hundred words are written at each frame of a drag. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 4000;

function measured(ctx: CanvasRenderingContext2D, font: string, text: string): number {
  const key = `${font} ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  if (widths.size >= MOST_WIDTHS) widths.clear();
  const { width } = ctx.measureText(text);
  widths.set(key, width);
  return width;
}

/** A length on the drawing, where the unit stands in the title block: "0.74". */
export const figure = (pen: Pen, mm: number, near?: number): string => lengthAlone(mm, pen.units, near);

/** Radians at which words along a direction can be read from below or from the right. */
export function readable(dx: number, dy: number): number {
  const angle = Math.atan2(dy, dx);
  if (angle > Math.PI / 2 - 0.01) return angle - Math.PI;
  return angle < -Math.PI / 2 - 0.01 ? angle + Math.PI : angle;
}
