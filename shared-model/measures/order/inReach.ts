import type { Reach } from '../reach.ts';
import { judgeTake } from '../trayReach.ts';
import type { IsInReach } from './insertion.ts';

/** Whether the smallest child takes a tray from a board; yes where it is not known. */
export function inReachOf(reach: () => Reach): IsInReach {
  return (tray, side, board, x) => {
    const { smallest, spotOf } = reach();
    if (!smallest || board.surface === null) return true;
    const spot = spotOf(side, board, tray, { surface: board.surface, clear: board.clear, x, y: 0 });
    return judgeTake(smallest, spot, tray).verdict !== 'beyond';
  };
}
