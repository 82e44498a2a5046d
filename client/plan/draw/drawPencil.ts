import { colours, dashes } from '#client/styles/tokens.ts';
import type { Edit } from '#model/findings/edit.ts';
import { pieceBody } from '#model/scene/bodies.ts';
import type { Arrangement, Piece } from '#model/schema/types.ts';
import type { PlanModel } from '../planModel.ts';
import { drawArrowHead } from './drawMarks.ts';
import { ringOf } from './drawShape.ts';
import { at, line, type Pen, path, planPath, stroke } from './pen.ts';

type DrawProposal = (pen: Pen, model: PlanModel, edits: readonly Edit[]) => void;

/** How moves are drawn that wait for somebody to decide: comes with the words that tell them. */
export const proposalPart: { draw?: DrawProposal } = {};

/** A proposed fix: where things would stand, dashed, with a line from where they stand. */
export function drawPencil(pen: Pen, arrangement: Pick<Arrangement, 'pieces'>, edits: readonly Edit[]): void {
  for (const edit of edits) {
    if (edit.do === 'move-corners') {
      planPath(pen, edit.corners);
      stroke(pen, { colour: colours.pencil, width: 1.6, dash: dashes.proposed });
      continue;
    }
    if (edit.do !== 'move-piece' && edit.do !== 'change-piece') continue;
    const piece = arrangement.pieces.find((p) => p.id === edit.piece);
    if (!piece) continue;
    drawProposed(pen, piece, changed(piece, edit));
  }
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
