import type { AreaCode } from '#model/catalogue/areas.ts';
import type { Point } from '#model/geometry/vec.ts';
import { type Pen, path, stroke } from './pen.ts';

export type Hatch = AreaCode | 'unseen' | 'uncounted';
export type HatchWay = 'level' | 'upright' | 'rising' | 'falling';

const STEP = 5;
/** The lines of each hatch; art has dots. */
export const hatchWays: Readonly<Record<Exclude<Hatch, 'AR'>, readonly HatchWay[]>> = {
  PL: ['level'],
  SE: ['upright'],
  MA: ['rising'],
  LA: ['falling'],
  CU: ['level', 'upright'],
  unseen: ['rising'],
  uncounted: ['falling'],
};

/** Fills a ring (px) with an area's lines; they hang on the ring, so they do not shimmer as it moves. What lies in `holes` stays bare. */
export function hatch(
  pen: Pen,
  ring: readonly Point[],
  kind: Hatch,
  colour: string,
  step = STEP,
  holes: readonly (readonly Point[])[] = [],
): void {
  const xs = ring.map((p) => p.x);
  const ys = ring.map((p) => p.y);
  const box = { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
  const { ctx } = pen;
  ctx.save();
  path(pen, ring);
  for (const hole of holes) {
    hole.forEach((p, i) => {
      if (i === 0) ctx.moveTo(p.x, p.y);
      else ctx.lineTo(p.x, p.y);
    });
    ctx.closePath();
  }
  ctx.clip('evenodd');
  ctx.beginPath();
  if (kind === 'AR') dots(ctx, box, step);
  else for (const way of hatchWays[kind]) lines(ctx, box, way, step);
  if (kind === 'AR') {
    ctx.fillStyle = colour;
    ctx.fill();
  } else stroke(pen, { colour, width: 0.7 });
  ctx.restore();
}

interface Extent {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

function dots(ctx: CanvasRenderingContext2D, box: Extent, step: number): void {
  for (let y = box.y0 + step / 2; y < box.y1; y += step)
    for (let x = box.x0 + step / 2; x < box.x1; x += step) ctx.rect(x - 0.6, y - 0.6, 1.2, 1.2);
}

function lines(ctx: CanvasRenderingContext2D, box: Extent, way: HatchWay, step: number): void {
  const high = box.y1 - box.y0;
  if (way === 'level') for (let y = box.y0 + step / 2; y < box.y1; y += step) segment(ctx, box.x0, y, box.x1, y);
  if (way === 'upright') for (let x = box.x0 + step / 2; x < box.x1; x += step) segment(ctx, x, box.y0, x, box.y1);
  // Slanted lines lie as close as the others when their run along x is longer.
  const run = step * Math.SQRT2;
  if (way === 'rising') for (let x = box.x0 - high; x < box.x1; x += run) segment(ctx, x, box.y1, x + high, box.y0);
  if (way === 'falling') for (let x = box.x0 - high; x < box.x1; x += run) segment(ctx, x, box.y0, x + high, box.y1);
}

function segment(ctx: CanvasRenderingContext2D, x0: number, y0: number, x1: number, y1: number): void {
  ctx.moveTo(x0, y0);
  ctx.lineTo(x1, y1);
}
