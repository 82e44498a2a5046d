import type { Material } from '#model/schema/types.ts';
import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import { freeRooms } from './gaps.ts';
import { type MadeRoom, putAmong, type Standing } from './makeRoom.ts';
import { alongBoard, type ReadingDirection } from './readingOrder.ts';

export interface FirstFit {
  readonly board: FrontBoard;
  /** All trays that change place (mm). */
  readonly places: ReadonlyMap<string, number>;
}

type Stepped = Pick<Material, 'strand' | 'step'>;

/**
 * A place on a shelf side for a tray of a width (mm): where its step asks for it if a gap there takes it, else the
 * first gap in reading order, else where the others can slide along. Null: no board has the room.
 */
export function firstFit(
  layout: FrontLayout,
  id: string,
  width: number,
  material: Stepped,
  gap: number,
  direction: ReadingDirection,
): FirstFit | null {
  const boards = layout.boards.filter((board) => board.level !== null || board.trays.length > 0);
  const free = boards.flatMap((board) => freePlaces(board, id, width, gap).map((x) => ({ board, x })));
  const inStep = free.find(({ board, x }) => isInStep(layout, board, x + width / 2, id, material, direction));
  const first = inStep ?? free[0];
  if (first) return { board: first.board, places: new Map([[id, first.x]]) };
  for (const board of boards) {
    const made: MadeRoom = putAmong(others(board, id), { id, x: board.width, width }, board.width, gap);
    if (made.fits) return { board, places: made.places };
  }
  return null;
}

const others = (board: FrontBoard, id: string): Standing[] => board.trays.filter((tray) => tray.id !== id);

function freePlaces(board: FrontBoard, id: string, width: number, gap: number): number[] {
  return freeRooms(others(board, id), board.width, gap)
    .filter((room) => room.width >= width)
    .map((room) => room.x);
}

/** Nothing of its strand with a higher step before it, nothing with a lower one after it. */
function isInStep(
  layout: FrontLayout,
  board: FrontBoard,
  middle: number,
  id: string,
  { strand, step }: Stepped,
  direction: ReadingDirection,
): boolean {
  if (step === null || step === undefined || strand === '') return true;
  let isBefore = true;
  for (const each of layout.boards) {
    if (each === board) {
      for (const tray of alongBoard(each, direction)) {
        const at = tray.x + tray.width / 2;
        const comesFirst = direction === 'rtl' ? at > middle : at < middle;
        if (!agrees(tray.id, tray.tray.material, comesFirst)) return false;
      }
      isBefore = false;
    } else if (each.trays.some((tray) => !agrees(tray.id, tray.tray.material, isBefore))) return false;
  }
  return true;

  function agrees(otherId: string, other: Stepped, comesFirst: boolean): boolean {
    if (otherId === id || other.strand !== strand || other.step === null || other.step === undefined) return true;
    return comesFirst ? other.step <= (step as number) : other.step >= (step as number);
  }
}
