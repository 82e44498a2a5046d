import { boardAt, type FrontBoard, type FrontLayout, type FrontTray } from './frontLayout.ts';
import { type Dropped, dropOnBoard } from './snap.ts';

export interface TrayDrop extends Dropped {
  readonly board: FrontBoard;
}

/** mm around the shelf where letting go still means a board */
const SLACK = 90;

/**
 * What letting a tray go does. x, z: the tray's left edge from the shelf's left side and its base above the floor (mm);
 * gap: between trays; tolerance: within which it catches (mm). Null: beside the shelf.
 */
export function trayDrop(layout: FrontLayout, tray: FrontTray, x: number, z: number, gap: number, tolerance: number): TrayDrop | null {
  const board = boardAt(layout, x + tray.width / 2, z, SLACK);
  if (!board) return null;
  const moving = { id: tray.id, width: tray.width, x: x - board.left };
  return { board, ...dropOnBoard(board.trays, moving, board.width, gap, tolerance) };
}
