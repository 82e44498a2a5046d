import { BOARD_MM, LEAST_BOARD, LEAST_TRAY, MOST_LINES, NAME_LINE } from './drawnSizes.ts';
import type { FrontBoard } from './frontLayout.ts';
import type { FrontView } from './frontView.ts';

/** px: the dashed box of free room */
const FREE_ROOM = 18;
/** px under the floor line to the names there; below them comes the arrow of reading */
const UNDER_FLOOR = 10;
const FLOOR_LINES = 2;
/** px to the text and after it */
const AIR = 2;

/** Something that stands on a board, in mm along the shelf and above the floor. */
export interface Standing {
  readonly from: number;
  readonly to: number;
  readonly surface: number;
  readonly height: number;
  /** px that it is drawn high at least */
  readonly least?: number;
}

/** What stands on all boards and the free room written there: what names have to keep clear of. */
export const standingOn = (boards: readonly FrontBoard[]): Standing[] =>
  boards.flatMap((board) => [
    ...board.trays.map(({ x, width, height }) => thingAt(board, x, width, height)),
    ...board.free.map(({ x, width }) => ({ ...thingAt(board, x, width, 0), least: FREE_ROOM })),
  ]);

const thingAt = (board: FrontBoard, x: number, width: number, height: number): Standing => ({
  from: board.left + x,
  to: board.left + x + width,
  surface: board.surface,
  height,
});

/** The boards without the free room that the names of the board above need the place of: the tray list says it too, names nothing else does. */
export function freeBesideNames(boards: readonly FrontBoard[], view: FrontView): FrontBoard[] {
  return boards.map((board, index) => {
    const above = boards[index - 1];
    if (!above || above.trays.length === 0 || board.free.length === 0) return board;
    const clear = view.toY(board.surface) - nameTop(above, view);
    return clear >= FREE_ROOM && clear < NAME_LINE + AIR + FREE_ROOM ? { ...board, free: [] } : board;
  });
}

/** Where the names below a board begin (px on the drawing). */
export function nameTop(board: Pick<FrontBoard, 'surface'>, view: FrontView): number {
  const under = view.toY(board.surface) + Math.max(LEAST_BOARD, BOARD_MM * view.scale) + AIR;
  return view.toY(0) - under < NAME_LINE + AIR ? view.toY(0) + UNDER_FLOOR : under;
}

/**
 * Lines of text between a board and what stands below it.
 * @param from, to mm along the shelf where the name may come to lie
 */
export function linesBelow(
  board: Pick<FrontBoard, 'surface'>,
  boards: readonly Pick<FrontBoard, 'surface' | 'level'>[],
  standing: readonly Standing[],
  { from, to }: { readonly from: number; readonly to: number },
  view: FrontView,
): number {
  const top = nameTop(board, view);
  if (top > view.toY(0)) return FLOOR_LINES;
  const below = standing.filter((thing) => thing.surface < board.surface && thing.from < to && thing.to > from);
  const limit = Math.min(
    view.toY(0),
    ...boards.filter((other) => other.level !== null && other.surface < board.surface).map((other) => view.toY(other.surface)),
    ...below.map((thing) => view.toY(thing.surface) - Math.max(thing.least ?? LEAST_TRAY, thing.height * view.scale)),
  );
  return Math.max(0, Math.min(MOST_LINES, Math.floor((limit - AIR - top) / NAME_LINE)));
}
