import type { FitOption } from '#model/measures/fit.ts';
import type { Session } from '../session/types.ts';
import { bestPlace, fitOptions } from './fitOptions.ts';
import { fitTitle } from './sayFit.ts';

/** Puts a material where an option says, in one step to take back. */
export function putOption(session: Session, id: string, option: FitOption): void {
  const name = session.scene().materialById.get(id)?.name ?? 'The tray';
  const edits = option.placements.map((placement) => ({ do: 'place' as const, placement }));
  const title = fitTitle(session.scene(), option);
  if (edits.length === 0 || !session.commands.applyEdits(session.arrangement().id, edits)) {
    session.announce(`${name} could not be put there: the shelf or the material is gone.`);
    return;
  }
  session.setView({ material: id, frontOf: { piece: option.side.piece.id, side: option.side.side } });
  const slid = edits.length - 1;
  session.announce(`${name}: ${title}${slid > 0 ? `; ${slid === 1 ? 'one other' : `${slid} others`} slid along` : ''}.`);
}

/** Puts a material on its best place; others slide along where they have to. @returns false: no board takes it, and it was said. */
export function placeBest(session: Session, id: string): boolean {
  const best = bestPlace(fitOptions(session.scene(), id));
  if (best) putOption(session, id, best);
  else session.announce('No board takes it. What each is short of is shown beside the table.');
  return best !== null;
}
