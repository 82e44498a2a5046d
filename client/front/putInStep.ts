import { trayGapOf } from '#model/measures/order/classOptions.ts';
import type { Session } from '../session/types.ts';
import { frontActions } from './frontActions.ts';
import { frontLayout, UNMEASURED } from './frontLayout.ts';
import { slideApart } from './makeRoom.ts';
import { isLeftOf, orderMoves } from './orderMoves.ts';

/** Puts one misplaced tray where it belongs; the others there slide along. @returns false: it stays, and it was said why. */
export function putInStep(session: Session, id: string): boolean {
  const to = orderMoves(session.report()).get(id);
  const scene = session.scene();
  const side = to && scene.sides.find((each) => each.piece.id === to.piece && each.side === to.side);
  const layout = side && frontLayout(side, trayGapOf(scene.classroom));
  const board = layout?.boards.find((each) => each.key === (to?.level ?? ''));
  const material = scene.materialById.get(id);
  if (!to || !layout || !board || !material) {
    session.announce(`${material?.name ?? 'The tray'} has no better place just now.`);
    return false;
  }
  const isTurned = scene.stands.get(id)?.placement.turned ?? false;
  const width = (isTurned ? material.depth : material.width) ?? UNMEASURED.width;
  const others = board.trays.filter((tray) => tray.id !== id);
  const left = others.filter((tray) => isLeftOf(tray, to));
  const inOrder = [...left, { id, x: to.x, width }, ...others.filter((tray) => !left.includes(tray))];
  const made = slideApart(inOrder, board.width, trayGapOf(scene.classroom), id);
  const actions = frontActions(session);
  if (made.fits) actions.stand(layout, board, id, made.places);
  else actions.stand(layout, board, id, new Map([[id, to.x]]), made.shortBy);
  return true;
}
