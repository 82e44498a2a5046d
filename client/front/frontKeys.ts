import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import { type InOrder, inReadingOrder, type ReadingDirection } from './readingOrder.ts';
import { dropOnBoard } from './snap.ts';
import { stepAlong } from './stepAlong.ts';

/** What a key means on a front. mm. */
export type KeyMeaning =
  | { readonly does: 'choose'; readonly id: string }
  | { readonly does: 'stand'; readonly board: FrontBoard; readonly places: ReadonlyMap<string, number>; readonly shortBy: number }
  | { readonly does: 'put away' }
  | { readonly does: 'let go' }
  | { readonly does: 'nothing'; readonly say: string };

export interface Key {
  readonly key: string;
  readonly shift: boolean;
}

/** mm an arrow slides a tray; with Shift */
const STEP = 10;
const LONG_STEP = 100;

/**
 * Tab goes through the trays as they are read and leaves the drawing after the last; arrows slide the chosen tray along
 * its board or to the next one; Delete puts it on the table; Esc lets it go. Null: not a key of the front.
 */
export function keyMeaning(
  layout: FrontLayout,
  chosen: string | null,
  key: Key,
  gap: number,
  direction: ReadingDirection,
): KeyMeaning | null {
  const order = inReadingOrder(layout, direction);
  const at = order.findIndex((entry) => entry.tray.id === chosen);
  if (key.key === 'Tab') {
    const next = order[at === -1 ? (key.shift ? -1 : 0) : at + (key.shift ? -1 : 1)];
    return next ? { does: 'choose', id: next.tray.id } : null;
  }
  const entry = order[at];
  if (!entry) return null;
  switch (key.key) {
    case 'ArrowLeft':
      return along(entry, key.shift ? -LONG_STEP : -STEP);
    case 'ArrowRight':
      return along(entry, key.shift ? LONG_STEP : STEP);
    case 'ArrowUp':
      return toBoard(layout, entry, -1, gap);
    case 'ArrowDown':
      return toBoard(layout, entry, 1, gap);
    case 'Delete':
    case 'Backspace':
      return { does: 'put away' };
    case 'Escape':
      return { does: 'let go' };
    default:
      return null;
  }
}

function along({ tray, board }: InOrder, by: number): KeyMeaning {
  const { places } = stepAlong(board.trays, tray.id, board.width, by);
  if (places.size === 0) return { does: 'nothing', say: `The ${board.name.toLowerCase()} board ends here.` };
  return { does: 'stand', board, places, shortBy: 0 };
}

function toBoard(layout: FrontLayout, { tray, board }: InOrder, by: 1 | -1, gap: number): KeyMeaning {
  const next = layout.boards[layout.boards.indexOf(board) + by];
  if (!next) return { does: 'nothing', say: by === 1 ? 'This is the lowest board.' : 'This is the highest board.' };
  const moving = { id: tray.id, width: tray.width, x: tray.x + board.left - next.left };
  const { places, shortBy } = dropOnBoard(next.trays, moving, next.width, gap, 0);
  return { does: 'stand', board: next, places, shortBy };
}
