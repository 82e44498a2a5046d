import { trayGapOf } from '#model/measures/order/classOptions.ts';
import { sayOrdinal } from '#model/scene/boardWord.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { Session } from '../session/types.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';
import { type FrontBoard, type FrontLayout, frontLayout } from './frontLayout.ts';
import { inReadingOrder } from './readingOrder.ts';
import { sideName } from './shelfNames.ts';
import { placeEdits } from './trayEdits.ts';

/** What can be done with trays, each one transaction, one step to take back, and said aloud. */
export interface FrontActions {
  /** Trays come to stand at x (mm) on a board of a front. `shortBy`: mm by which they overlap. */
  stand(layout: FrontLayout, board: FrontBoard, id: string, places: ReadonlyMap<string, number>, shortBy?: number): void;
  putAway(id: string): void;
  /** Onto another shelf, where its step asks for it or where there is room. @returns false: nowhere, and it was said */
  toShelf(id: string, side: SceneSide): Promise<boolean>;
  turn(id: string): void;
}

/** Where a tray fits needs the order of all materials, which is not needed to draw a front. */
const loadToShelf = () => import('./toShelf.ts');
fetchWhenQuiet(loadToShelf);

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

  async function toShelf(id: string, side: SceneSide): Promise<boolean> {
    const loaded = await loadToShelf().catch(() => null);
    if (loaded) return loaded.toShelf(session, id, side, stand);
    session.announce(`${nameOf(id)} stays where it was: a part of the page could not be fetched. Try again with the server in reach.`);
    return false;
  }

  function turn(id: string): void {
    const placement = session.scene().stands.get(id)?.placement;
    if (!placement) return;
    session.commands.place(session.arrangement().id, { ...placement, turned: !placement.turned });
    session.announce(`${nameOf(id)} is turned${placement.turned ? ' back' : ' a quarter'}.`);
  }

  return { stand, putAway, toShelf, turn };
}
