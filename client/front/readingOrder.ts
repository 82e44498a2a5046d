import type { FrontBoard, FrontLayout, FrontTray } from './frontLayout.ts';

export interface InOrder {
  readonly tray: FrontTray;
  readonly board: FrontBoard;
}

export type ReadingDirection = 'ltr' | 'rtl';

/** The trays of one board as they are read. */
export function alongBoard(board: FrontBoard, direction: ReadingDirection): readonly FrontTray[] {
  const byX = [...board.trays].sort((p, q) => p.x - q.x);
  return direction === 'rtl' ? byX.reverse() : byX;
}

/** The trays of a shelf side in the order a child meets them: board by board from the top. */
export function inReadingOrder(layout: FrontLayout, direction: ReadingDirection): InOrder[] {
  return layout.boards.flatMap((board) => alongBoard(board, direction).map((tray) => ({ tray, board })));
}
