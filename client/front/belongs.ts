import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import { type BelongsAt, isLeftOf } from './orderMoves.ts';
import type { ReadingDirection } from './readingOrder.ts';

export interface GapMark {
  readonly board: FrontBoard;
  /** mm on the board: where the middle of the tray belongs, between those that stay */
  readonly x: number;
  /** Its place on this side once all stand where they belong: 1 is the first. */
  readonly place: number;
}

/** Where on this front a tray belongs; null: on another shelf, or nowhere yet. `moves`: where each misplaced tray belongs. */
export function gapMark(
  layout: FrontLayout,
  id: string,
  moves: ReadonlyMap<string, BelongsAt | null>,
  direction: ReadingDirection,
): GapMark | null {
  const to = moves.get(id);
  if (!to || to.piece !== layout.piece.id || to.side !== layout.side) return null;
  const boardIndex = layout.boards.findIndex((candidate) => candidate.key === (to.level ?? ''));
  const board = layout.boards[boardIndex];
  if (!board) return null;
  const width = layout.boards.flatMap((b) => b.trays).find((tray) => tray.id === id)?.width ?? 0;
  const staying = board.trays.filter((tray) => !moves.has(tray.id));
  const start = Math.max(0, ...staying.filter((tray) => isLeftOf(tray, to)).map((tray) => tray.x + tray.width));
  const end = Math.min(board.width, ...staying.filter((tray) => !isLeftOf(tray, to)).map((tray) => tray.x));
  const comesFirst = (isLeft: boolean): boolean => isLeft !== (direction === 'rtl');
  let earlier = 0;
  layout.boards.forEach((other, index) => {
    for (const tray of other.trays) {
      if (moves.has(tray.id)) continue;
      if (index < boardIndex || (index === boardIndex && comesFirst(isLeftOf(tray, to)))) earlier += 1;
    }
  });
  for (const [otherId, other] of moves) {
    if (otherId === id || !other || other.piece !== to.piece || other.side !== to.side) continue;
    const index = layout.boards.findIndex((candidate) => candidate.key === (other.level ?? ''));
    if (index < boardIndex || (index === boardIndex && comesFirst(other.x < to.x))) earlier += 1;
  }
  return { board, x: Math.max(start, Math.min(Math.max(start, end), to.x + width / 2)), place: earlier + 1 };
}
