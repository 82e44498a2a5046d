import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { Session } from '../session/types.ts';
import { firstFit } from './firstFit.ts';
import { fitOptions } from './fitOptions.ts';
import type { FrontActions } from './frontActions.ts';
import { frontLayout, UNMEASURED } from './frontLayout.ts';
import { putOption } from './putOption.ts';
import { shelfWords } from './shelfNames.ts';

/** Onto another shelf: a children's shelf takes it where its step asks for it, any other where there is room. @returns false: nowhere */
export function toShelf(session: Session, id: string, side: SceneSide, stand: FrontActions['stand']): boolean {
  const scene = session.scene();
  const material = scene.materialById.get(id);
  if (!material) return false;
  const fit = fitOptions(scene, id).find((option) => option.side === side && option.fits !== 'no');
  if (fit) {
    putOption(session, id, fit);
    return true;
  }
  const gap = trayGapOf(scene.classroom);
  const layout = frontLayout(side, gap);
  const isTurned = scene.stands.get(id)?.placement.turned ?? false;
  const width = (isTurned ? material.depth : material.width) ?? UNMEASURED.width;
  const found = side.isForChildren ? null : firstFit(layout, id, width, gap);
  if (!found) {
    const units = session.classroom().display.units;
    session.announce(`No board of ${shelfWords(scene, side.piece.id)} has ${sayLength(width, units)} free for ${material.name}.`);
    return false;
  }
  stand(layout, found.board, id, found.places);
  return true;
}
