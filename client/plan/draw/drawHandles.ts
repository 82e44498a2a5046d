import { colours } from '#client/styles/tokens.ts';
import { distance, dot, lerp, type Point, sub } from '#model/geometry/vec.ts';
import type { Handle } from '../handles.ts';
import type { LabelPlace } from './labelPlace.ts';
import { fill, line, type Pen, readable, stroke, write } from './pen.ts';

/** Small squares for a mouse, rings of 22 px for a finger. Words that a handle's stem would strike through stand on it. */
export function drawHandles(pen: Pen, handles: readonly Handle[], labels: readonly LabelPlace[], isTouch: boolean): void {
  for (const handle of handles) {
    if (distance(handle.at, handle.foot) > 0) drawStem(pen, handle, labels);
    if (isTouch || handle.what === 'turn') drawRing(pen, handle, isTouch ? 11 : 5);
    else drawSquare(pen, handle);
  }
}

function drawStem(pen: Pen, { foot, at }: Handle, labels: readonly LabelPlace[]): void {
  line(pen, foot, at, { colour: colours.blue, width: 1 });
  for (const { said, center, size, weight, along, half } of labels) {
    if (distance(nearestOnStem(foot, at, center), center) > half + 2) continue;
    write(pen, said, center, { size, weight, angle: readable(along.x, along.y), ground: colours.leaf });
  }
}

function nearestOnStem(foot: Point, at: Point, p: Point): Point {
  const along = sub(at, foot);
  const share = dot(sub(p, foot), along) / Math.max(1, dot(along, along));
  return lerp(foot, at, Math.max(0, Math.min(1, share)));
}

function drawRing(pen: Pen, { at, what }: Handle, radius: number): void {
  const { ctx } = pen;
  ctx.beginPath();
  ctx.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  fill(pen, colours.paper);
  stroke(pen, { colour: colours.blue, width: 1.8 });
  if (radius < 8) return;
  if (what === 'turn') {
    ctx.beginPath();
    ctx.arc(at.x, at.y, 5, -2.4, 1.6);
    stroke(pen, { colour: colours.blue, width: 1.4 });
    return;
  }
  for (const shift of [-2, 2])
    line(pen, { x: at.x - 4, y: at.y + shift }, { x: at.x + 4, y: at.y + shift }, { colour: colours.blue, width: 1.4 });
}

function drawSquare(pen: Pen, { at }: Handle): void {
  pen.ctx.beginPath();
  pen.ctx.rect(at.x - 3.5, at.y - 3.5, 7, 7);
  fill(pen, colours.paper);
  stroke(pen, { colour: colours.blue, width: 1.4 });
}
