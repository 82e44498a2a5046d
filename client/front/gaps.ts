import type { Standing } from './makeRoom.ts';

/** Room between two trays or a tray and the board's end (mm from the board's left end). */
export interface Gap {
  readonly x: number;
  readonly width: number;
  /** The trays at its ends; null: the board's end. */
  readonly after: string | null;
  readonly before: string | null;
}

/** Every bare stretch of a board, left to right. */
export function gapsOn(trays: readonly Standing[], boardWidth: number): Gap[] {
  const gaps: Gap[] = [];
  let from = 0;
  let after: string | null = null;
  for (const tray of [...trays].sort((p, q) => p.x - q.x)) {
    const to = Math.min(tray.x, boardWidth);
    if (to > from) gaps.push({ x: from, width: to - from, after, before: tray.id });
    if (tray.x + tray.width <= from) continue;
    from = tray.x + tray.width;
    after = tray.id;
  }
  if (boardWidth > from) gaps.push({ x: from, width: boardWidth - from, after, before: null });
  return gaps;
}

/** Where a tray can stand that keeps its distance to its neighbours (mm from the board's left end). */
export interface FreeRoom {
  readonly x: number;
  readonly width: number;
}

/** How wide a tray a gap takes when it keeps `trayGap` mm to the trays beside it, and from where. */
function roomIn(gap: Gap, trayGap: number): FreeRoom {
  const left = gap.after === null ? 0 : trayGap;
  const right = gap.before === null ? 0 : trayGap;
  return { x: gap.x + left, width: Math.max(0, gap.width - left - right) };
}

/** Every stretch of a board that takes one more tray without moving others, left to right. */
export const freeRooms = (trays: readonly Standing[], boardWidth: number, trayGap: number): FreeRoom[] =>
  gapsOn(trays, boardWidth)
    .map((gap) => roomIn(gap, trayGap))
    .filter((room) => room.width > 0);

/** The widest tray that a board still takes without moving others (mm), and where. */
export function widestRoom(trays: readonly Standing[], boardWidth: number, trayGap: number): FreeRoom {
  let best = { x: 0, width: 0 };
  for (const room of freeRooms(trays, boardWidth, trayGap)) if (room.width > best.width) best = room;
  return best;
}
