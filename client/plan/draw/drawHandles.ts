import { colours } from '#client/styles/tokens.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { type Handle, handlesOf } from '../handles.ts';
import { fill, line, type Pen, stroke } from './pen.ts';

/** Small squares for a mouse, rings of 22 px for a finger. */
export function drawHandles(pen: Pen, body: SceneBody, isTouch: boolean): void {
  for (const handle of handlesOf(body, pen.view)) {
    if (handle.what === 'turn') line(pen, handle.foot, handle.at, { colour: colours.blue, width: 1 });
    if (isTouch || handle.what === 'turn') drawRing(pen, handle, isTouch ? 11 : 5);
    else drawSquare(pen, handle);
  }
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
