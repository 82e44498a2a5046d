import { packedWidth } from './packing.ts';
import { readWorkSide, type StandSize, tooDeepBy, tooTallBy, type WorkBoard, type WorkShelves, type WorkTray } from './workShelves.ts';

/** A place between two trays of a board (or at an end) where something could stand. mm. */
export interface Slot {
  readonly board: WorkBoard;
  /** Trays of the board to the left of it. */
  readonly index: number;
  /** Left end of the free stretch, the wanted gap to the neighbours taken off. */
  readonly from: number;
  /** Free width with the wanted gap kept; below zero where neighbours overlap. */
  readonly free: number;
  /** Where the thing's left edge would come, next to what is read before it. */
  readonly x: number;
  /** How many trays of this side are read before it. */
  readonly rankInSide: number;
  /** mm short in width when nothing else moves; 0: fits as it is. */
  readonly shortBy: number;
  /** mm the whole board is short when its trays are moved together and keep the gap; 0: fits then. */
  readonly boardShortBy: number;
  readonly tooDeepBy: number;
  readonly tooTallBy: number;
}

/** Every place of one board for a thing of this size, from the left. */
export function slotsOn(board: WorkBoard, work: WorkShelves['sides'][number], size: StandSize, shelves: WorkShelves): Slot[] {
  const { gap, direction } = shelves;
  const { trays } = board;
  const boardWidth = board.board.width;
  const needed = packedWidth([...trays.map((tray) => tray.width), size.width], gap);
  const above = work.boards.slice(0, board.index).reduce((sum, other) => sum + other.trays.length, 0);
  const isColumns = board.side.piece.reading === 'columns';
  const slots: Slot[] = [];
  let from = 0;
  for (let index = 0; index <= trays.length; index++) {
    const next = trays[index];
    const to = next ? Math.min(next.x - gap, boardWidth) : boardWidth;
    const shortBy = Math.max(0, size.width - (to - from));
    const last = shortBy > 0 ? from : to - size.width;
    const along = direction === 'ltr' ? index : trays.length - index;
    const first = direction === 'ltr' ? from : last;
    // In columns the place along the board decides which column it is: any that stands on another board will do.
    const tries = isColumns ? new Set([first, direction === 'ltr' ? last : from, ...columnEdges(work, from, last)]) : [first];
    for (const x of tries)
      slots.push({
        board,
        index,
        from,
        free: to - from,
        x,
        rankInSide: isColumns ? rankInColumns(work, shelves, x, size, board.index) : above + along,
        shortBy,
        boardShortBy: Math.max(0, needed - boardWidth),
        tooDeepBy: tooDeepBy(size, board.board),
        tooTallBy: tooTallBy(size, board.board),
      });
    if (next) from = Math.max(from, next.x + next.width + gap);
  }
  return slots;
}

function columnEdges(work: WorkShelves['sides'][number], from: number, to: number): number[] {
  return work.boards.flatMap(({ trays }) => trays.map((tray) => tray.x).filter((x) => x > from && x < to));
}

function rankInColumns(work: WorkShelves['sides'][number], shelves: WorkShelves, x: number, size: StandSize, board: number): number {
  const tried: WorkTray = { id: '', x, width: size.width, board, placement: null };
  return readWorkSide(work, shelves.direction, tried).indexOf(tried);
}
