import type { Scene, SceneSide, SceneTray } from '../../scene/types.ts';

export type ReadingDirection = Scene['classroom']['display']['readingDirection'];

/** What a reading order needs to know of a tray: left edge and width (mm; null: not known) and the board, counted from the top. */
export interface ReadTray {
  readonly id: string;
  readonly x: number;
  readonly width: number | null;
  readonly board: number;
}

/** mm: a tray of unknown width counts as a small one when columns are told apart. */
const UNKNOWN_WIDTH = 300;

/** Every tray on a children's shelf, in the order in which a child meets it. */
export function readingOrder(scene: Scene): SceneTray[] {
  const direction = scene.classroom.display.readingDirection;
  return scene.sides.filter((side) => side.isForChildren).flatMap((side) => readSide(side, direction));
}

function readSide(side: SceneSide, direction: ReadingDirection): SceneTray[] {
  const trays = side.boards.flatMap((board, index) =>
    board.trays.map((tray) => ({ id: tray.material.id, x: tray.placement.x, width: tray.width, board: index, tray })),
  );
  return inReadingOrder(trays, side.piece.reading, direction).map(({ tray }) => tray);
}

/**
 * Trays of one side in reading order. Rows: board by board from the top, along each board. Columns: the trays that begin
 * under (or over) the first half of the leading tray make a column, read from the top; then the next column.
 */
export function inReadingOrder<T extends ReadTray>(trays: readonly T[], reading: 'rows' | 'columns', direction: ReadingDirection): T[] {
  const start = (t: ReadTray) => (direction === 'ltr' ? t.x : -(t.x + (t.width ?? 0)));
  const alongBoard = (p: T, q: T) => start(p) - start(q) || (p.id < q.id ? -1 : 1);
  const byRow = (p: T, q: T) => p.board - q.board || alongBoard(p, q);
  if (reading === 'rows') return [...trays].sort(byRow);
  const waiting = [...trays].sort(alongBoard);
  const read: T[] = [];
  while (waiting.length > 0) {
    const leader = waiting[0] as T;
    const half = start(leader) + (leader.width ?? UNKNOWN_WIDTH) / 2;
    const count = waiting.findIndex((tray) => tray !== leader && start(tray) >= half);
    read.push(...waiting.splice(0, count === -1 ? waiting.length : count).sort(byRow));
  }
  return read;
}
