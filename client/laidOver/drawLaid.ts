export { laidChanges } from './laidChanges.ts';

import type { PieceChange } from '#model/analysis/moveDay/differences.ts';
import { distance, type Point } from '#model/geometry/vec.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { bodyOfPiece } from '../plan/bodies.ts';
import { ringOf } from '../plan/draw/drawShape.ts';
import { at, line, type Pen, path, stroke, write } from '../plan/draw/pen.ts';
import { wordsAlong } from '../plan/draw/wordsAlong.ts';
import { colours, dashes } from '../styles/tokens.ts';

/** Where things stand in the arrangement that lies under: dashed, under all that stands. */
export function drawLaidUnder(pen: Pen, changes: readonly PieceChange[]): void {
  for (const { before } of changes) {
    if (!before) continue;
    path(pen, ringOf(pen, bodyOfPiece(before)));
    stroke(pen, { colour: colours.pencil, width: 1.4, dash: dashes.proposed });
  }
}

/** Thin lines between the two places of a thing, with the distance. */
export function drawLaidLines(pen: Pen, changes: readonly PieceChange[]): void {
  // Chairs go with their table.
  const moved = changes.flatMap(({ before, after, by }) =>
    before && after && by > 0 && after.table === null ? [{ before, after, by }] : [],
  );
  for (const { before, after } of moved) line(pen, at(pen, before), at(pen, after), { colour: colours.pencil, width: 0.9 });
  const taken: Point[] = [];
  // The longest first; where there is no room for a length the line alone stands, and the list says it.
  for (const { before, after, by } of [...moved].sort((p, q) => q.by - p.by)) {
    const [a, b] = [at(pen, before), at(pen, after)];
    const far = distance(a, b);
    if (far < 40) continue;
    const where = wordsAlong(a, b, far < 60 ? 14 : 0, taken);
    if (taken.some((other) => Math.abs(other.x - where.x) < 44 && Math.abs(other.y - where.y) < 15)) continue;
    taken.push(where);
    write(pen, sayLength(Math.round(by / 10) * 10, pen.units), where, { size: 10.5, colour: colours.pencilText, ground: colours.leaf });
  }
}
