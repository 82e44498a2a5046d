import { colours, lines } from '#client/styles/tokens.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import { labelPlace } from './labelPlace.ts';
import { at, fill, type Pen, path, readable, stroke, write } from './pen.ts';

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

/** The label along the long side. */
export function label(pen: Pen, body: SceneBody, text: string, weight: number, short?: string): void {
  const place = labelPlace(pen, body, text, weight, short);
  if (!place) return;
  const { said, center, size, along } = place;
  write(pen, said, center, { size, weight, angle: readable(along.x, along.y), ground: colours.leaf });
}
