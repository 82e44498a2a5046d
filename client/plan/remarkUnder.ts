import type { Point } from '#model/geometry/vec.ts';
import type { Note } from '#model/schema/types.ts';
import { bodyById, type PlanModel } from './planModel.ts';
import { toScreen } from './viewport.ts';

/** px from the place that a remark is about to its number's box, as it is drawn */
const BOX = { minX: 7, minY: -18, maxX: 23, maxY: -4 } as const;

export interface NumberedRemark {
  readonly note: Note;
  /** From 1, as the drawing and the print number it. */
  readonly number: number;
}

/** The remark whose number a press means, the uppermost first; null: none. @param at px of the canvas @param reach px beside it that still mean it */
export function remarkUnder(model: PlanModel, at: Point, reach: number): NumberedRemark | null {
  const { notes } = model.session.classroom();
  for (let i = notes.length - 1; i >= 0; i--) {
    const note = notes[i] as Note;
    const place = toScreen(model.view, (note.on === null ? undefined : bodyById(model, note.on)?.center) ?? note);
    const [dx, dy] = [at.x - place.x, at.y - place.y];
    if (dx >= BOX.minX - reach && dx <= BOX.maxX + reach && dy >= BOX.minY - reach && dy <= BOX.maxY + reach)
      return { note, number: i + 1 };
  }
  return null;
}

/** "Remark 2, by MK: “…”, done." */
export const sayRemark = ({ note, number }: NumberedRemark): string =>
  `Remark ${number}${note.by ? `, by ${note.by}` : ''}: “${note.text}”${note.done ? ', done' : ''}.`;
