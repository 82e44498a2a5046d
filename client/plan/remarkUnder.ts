import { grownBox } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import { bodyById, type PlanModel } from './planModel.ts';
import { type NumberedRemark, numberedRemarks, REMARK_BOX, remarkPlace } from './remarks.ts';
import { toScreen } from './viewport.ts';

/** The remark whose number a press means, the uppermost first; null: none. @param at px of the canvas @param reach px beside it that still mean it */
export function remarkUnder(model: PlanModel, at: Point, reach: number): NumberedRemark | null {
  const { minX, minY, maxX, maxY } = grownBox(REMARK_BOX, reach);
  const isMeant = ({ note }: NumberedRemark): boolean => {
    const place = toScreen(
      model.view,
      remarkPlace(note, (id) => bodyById(model, id)),
    );
    const [x, y] = [at.x - place.x, at.y - place.y];
    return x >= minX && x <= maxX && y >= minY && y <= maxY;
  };
  return numberedRemarks(model.session.classroom().notes).findLast(isMeant) ?? null;
}

/** "Remark 2, by MK: “…”, done." */
export const sayRemark = ({ note, number }: NumberedRemark): string =>
  `Remark ${number}${note.by ? `, by ${note.by}` : ''}: “${note.text}”${note.done ? ', done' : ''}.`;
