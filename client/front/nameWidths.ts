import type { FrontBoard } from './frontLayout.ts';

/** px between two names */
const BETWEEN = 4;
/** px: a name gets no wider than this, and none at all below the least */
const MOST = 92;
const LEAST = 22;

/**
 * px that each tray's name may take below its board without running into the next: half the way to the middles
 * of its neighbours on both sides.
 */
export function nameWidths(board: Pick<FrontBoard, 'trays' | 'left'>, shelfWidth: number, scale: number): number[] {
  const middles = board.trays.map((tray) => (board.left + tray.x + tray.width / 2) * scale);
  return middles.map((middle, i) => {
    const before = i === 0 ? middle + 6 : (middle - (middles[i - 1] as number)) / 2;
    const next = middles[i + 1];
    const after = next === undefined ? shelfWidth * scale - middle + 6 : (next - middle) / 2;
    const width = 2 * Math.min(before, after) - BETWEEN;
    return width < LEAST ? 0 : Math.min(MOST, width);
  });
}
