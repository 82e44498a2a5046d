import { colours, dashes } from '#client/styles/tokens.ts';
import type { Edit } from '#model/findings/edit.ts';
import { sub, unit } from '#model/geometry/vec.ts';
import { pieceBody } from '#model/scene/bodies.ts';
import type { Arrangement, Piece } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { drawArrowHead } from './drawMarks.ts';
import { ringOf } from './drawShape.ts';
import { at, line, type Pen, path, planPath, stroke, write } from './pen.ts';

/** px past the arrow's head where a length stands */
const PAST = 18;

/** A proposed fix: where things would stand, dashed, with a line from where they stand and, if asked, its length. */
export function drawPencil(pen: Pen, arrangement: Pick<Arrangement, 'pieces'>, edits: readonly Edit[], hasLengths = false): void {
  for (const edit of edits) {
    if (edit.do === 'move-corners') {
      planPath(pen, edit.corners);
      stroke(pen, { colour: colours.pencil, width: 1.6, dash: dashes.proposed });
      continue;
    }
    if (edit.do !== 'move-piece' && edit.do !== 'change-piece') continue;
    const piece = arrangement.pieces.find((p) => p.id === edit.piece);
    if (!piece) continue;
    const after = changed(piece, edit);
    drawProposed(pen, piece, after);
    // Chairs go with their table; one length says it.
    if (hasLengths && piece.table === null) drawLength(pen, piece, after);
  }
}

function drawLength(pen: Pen, before: Piece, after: Piece): void {
  const mm = Math.hypot(after.x - before.x, after.y - before.y);
  if (mm < 0.5) return;
  const [from, to] = [at(pen, before), at(pen, after)];
  const along = unit(sub(to, from));
  const past = { x: to.x + along.x * PAST, y: to.y + along.y * PAST };
  write(pen, sayLength(Math.round(mm), pen.units), past, { size: 11.5, weight: 650, colour: colours.pencilText, ground: colours.leaf });
}

function changed(piece: Piece, edit: Extract<Edit, { do: 'move-piece' | 'change-piece' }>): Piece {
  if (edit.do === 'change-piece') return { ...piece, ...edit.set };
  return { ...piece, x: edit.x, y: edit.y, rotation: edit.rotation ?? piece.rotation };
}

function drawProposed(pen: Pen, before: Piece, after: Piece): void {
  const body = pieceBody(after);
  path(pen, ringOf(pen, body));
  stroke(pen, { colour: colours.pencil, width: 1.6, dash: dashes.proposed });
  const from = at(pen, before);
  const to = at(pen, after);
  if (Math.hypot(from.x - to.x, from.y - to.y) < 8) return;
  line(pen, from, to, { colour: colours.pencil, width: 1.1, dash: dashes.proposed });
  drawArrowHead(pen, from, to, colours.pencil);
}
