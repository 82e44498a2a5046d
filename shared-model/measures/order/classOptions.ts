import type { Classroom } from '../../schema/types.ts';

/** mm between trays so that two hands fit: an estimate of the trade, see the catalogue's notes on trays. */
export const TRAY_GAP = 50;

/** The class's own gap between trays (order/crowded), mm. */
export function trayGapOf(classroom: Classroom): number {
  const typed = classroom.options['order/crowded']?.trayGap;
  return typeof typed === 'number' && typed >= 0 && Number.isFinite(typed) ? typed : TRAY_GAP;
}

/** Whether the class wants practical life judged (order/sequence). */
export const judgesPracticalLife = (classroom: Classroom): boolean => classroom.options['order/sequence']?.practicalLife === true;

/** Whether the class wants strands of practical life to stand together (order/strand). */
export const joinsPracticalLife = (classroom: Classroom): boolean => classroom.options['order/strand']?.practicalLife === true;
