import { colours, lines } from '#client/styles/tokens.ts';
import { distance, type Point, sub, unit } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { at, fill, type Pen, path, readable, stroke, widthOf, write } from './pen.ts';

/** A footprint on the screen. */
export const ringOf = (pen: Pen, body: SceneBody): Point[] => body.footprint.map((p) => at(pen, p));

export function drawPlain(pen: Pen, body: SceneBody, colour: string): void {
  path(pen, ringOf(pen, body));
  fill(pen, colour);
  stroke(pen, { width: lines.outline });
}

export function drawPencilOutline(pen: Pen, body: SceneBody): void {
  path(pen, ringOf(pen, body));
  stroke(pen, { colour: colours.pencil, width: 1.2, dash: [4, 3] });
}

/** The label along the long side; what does not fit is left out from its end, the number last. */
export function label(pen: Pen, body: SceneBody, text: string, weight: number): void {
  if (!text) return;
  const isWide = body.width >= body.depth;
  const edge = isWide ? body.edges.front : body.edges.left;
  const a = at(pen, edge.a);
  const b = at(pen, edge.b);
  const long = distance(a, b);
  const thin = (isWide ? body.depth : body.width) * pen.view.k;
  if (thin < 9) return;
  const size = Math.max(10, Math.min(11.5, thin - 3));
  const said = [text, text.split(' ')[0] ?? ''].find((words) => widthOf(pen, words, size, weight) + 6 < long);
  if (!said) return;
  const along = unit(sub(b, a));
  write(pen, said, at(pen, body.center), { size, weight, angle: readable(along.x, along.y), ground: colours.leaf });
}
