import { trayGapOf } from '#model/measures/order/classOptions.ts';
import { sayOrdinal } from '#model/measures/placeWords.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { Session } from '../session/types.ts';
import { firstFit } from './firstFit.ts';
import { fitOptions } from './fitOptions.ts';
import { type FrontBoard, type FrontLayout, frontLayout, UNMEASURED } from './frontLayout.ts';
import { putOption } from './putOption.ts';
import { inReadingOrder } from './readingOrder.ts';
import { shelfWords, sideName } from './shelfNames.ts';
import { placeEdits } from './trayEdits.ts';

/** What can be done with trays, each one transaction, one step to take back, and said aloud. */
export interface FrontActions {
  /** Trays come to stand at x (mm) on a board of a front. `shortBy`: mm by which they overlap. */
  stand(layout: FrontLayout, board: FrontBoard, id: string, places: ReadonlyMap<string, number>, shortBy?: number): void;
  putAway(id: string): void;
  /** Onto another shelf, where its step asks for it or where there is room. @returns false: nowhere */
  toShelf(id: string, side: SceneSide): boolean;
  turn(id: string): void;
}

export function frontActions(session: Session): FrontActions {
  const units = () => session.classroom().display.units;
  const direction = () => session.classroom().display.readingDirection;
  const nameOf = (id: string): string => session.scene().materialById.get(id)?.name ?? 'The tray';

  function stand(layout: FrontLayout, board: FrontBoard, id: string, places: ReadonlyMap<string, number>, shortBy = 0): void {
    const arrangement = session.arrangement();
    const place = { piece: layout.piece.id, side: layout.side, level: board.level?.id ?? null };
    if (!session.commands.applyEdits(arrangement.id, placeEdits(arrangement, place, places))) {
      session.announce(`${nameOf(id)} could not be put there: the shelf or the tray is gone.`);
      return;
    }
    session.setView({ chosen: { kind: 'tray', id }, material: id });
    session.announce(sayWhere(id, shortBy, places.size - 1));
  }

  function sayWhere(id: string, shortBy: number, slid: number): string {
    const scene = session.scene();
    const tray = scene.stands.get(id);
    const side = scene.sides.find((each) => each.boards.some((board) => board === tray?.board));
    if (!tray?.board || !side) return `${nameOf(id)} is put down.`;
    const layout = frontLayout(side, trayGapOf(scene.classroom));
    const order = inReadingOrder(layout, direction());
    const at = order.findIndex((entry) => entry.tray.id === id);
    const board = order[at]?.board;
    const where = `${nameOf(id)}: ${sideName(scene, side)}, ${board?.name.toLowerCase() ?? ''} board, ${sayLength(tray.placement.x, units())} from the left, ${sayOrdinal(at + 1)} of ${order.length}`;
    const along = slid > 0 ? `; ${slid === 1 ? 'one other' : `${slid} others`} slid along` : '';
    return shortBy > 0 ? `${where}. It overlaps: the board is ${sayLength(shortBy, units())} too short.` : `${where}${along}.`;
  }

  function putAway(id: string): void {
    if (session.commands.putAway(session.arrangement().id, id)) session.announce(`${nameOf(id)} is on the table.`);
  }

  function toShelf(id: string, side: SceneSide): boolean {
    const scene = session.scene();
    const material = scene.materialById.get(id);
    if (!material) return false;
    // A children's shelf takes it where its step asks for it; any other, where there is room.
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
      session.announce(`No board of ${shelfWords(scene, side.piece.id)} has ${sayLength(width, units())} free for ${material.name}.`);
      return false;
    }
    stand(layout, found.board, id, found.places);
    return true;
  }

  function turn(id: string): void {
    const placement = session.scene().stands.get(id)?.placement;
    if (!placement) return;
    session.commands.place(session.arrangement().id, { ...placement, turned: !placement.turned });
    session.announce(`${nameOf(id)} is turned${placement.turned ? ' back' : ' a quarter'}.`);
  }

  return { stand, putAway, toShelf, turn };
}
