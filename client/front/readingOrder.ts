import { type ReadingDirection, inReadingOrder as readOff } from '#model/measures/order/reading.ts';
import type { Piece } from '#model/schema/types.ts';
import type { FrontBoard, FrontLayout, FrontTray } from './frontLayout.ts';

export type { ReadingDirection };
export interface InOrder {
  readonly tray: FrontTray;
  readonly board: FrontBoard;
}

/** "read left to right, then down"; "": nothing stands in rows on it. */
export function sayReading({ levels, reading }: Pick<Piece, 'levels' | 'reading'>, direction: ReadingDirection): string {
  if (levels.length === 0) return '';
  const reads = direction === 'rtl' ? 'right to left' : 'left to right';
  return reading === 'columns' ? `read down, then ${reads}` : `read ${reads}, then down`;
}

/** The trays of one board as they are read. */
export function alongBoard(board: FrontBoard, direction: ReadingDirection): readonly FrontTray[] {
  const byX = [...board.trays].sort((p, q) => p.x - q.x);
  return direction === 'rtl' ? byX.reverse() : byX;
}

/** The trays of a shelf side in the order a child meets them: board by board, or column by column. */
export function inReadingOrder(layout: FrontLayout, direction: ReadingDirection): InOrder[] {
  const all = layout.boards.flatMap((board, index) =>
    board.trays.map((tray) => ({ id: tray.id, x: board.left + tray.x, width: tray.width, board: index, entry: { tray, board } })),
  );
  return readOff(all, layout.piece.reading, direction).map(({ entry }) => entry);
}
