import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import { freeRooms } from './gaps.ts';
import { putAmong, type Standing } from './makeRoom.ts';

export interface FirstFit {
  readonly board: FrontBoard;
  /** All trays that change place (mm). */
  readonly places: ReadonlyMap<string, number>;
}

/**
 * The first board from the top that takes a tray of a width (mm): in a gap, else where the others can slide along.
 * Null: no board has the room.
 */
export function firstFit(layout: FrontLayout, id: string, width: number, gap: number): FirstFit | null {
  const boards = layout.boards.filter((board) => board.level !== null || board.trays.length > 0);
  for (const board of boards) {
    const room = freeRooms(others(board, id), board.width, gap).find((each) => each.width >= width);
    if (room) return { board, places: new Map([[id, room.x]]) };
  }
  for (const board of boards) {
    const made = putAmong(others(board, id), { id, x: board.width, width }, board.width, gap);
    if (made.fits) return { board, places: made.places };
  }
  return null;
}

const others = (board: FrontBoard, id: string): Standing[] => board.trays.filter((tray) => tray.id !== id);
