import { sayList } from '../text/sayList.ts';
import { type Day, waitersOf } from './dayOf.ts';

/** "Steps 4 and 7 wait for it." */
export function sayWaiters(day: Day, step: string): string {
  const waiting = waitersOf(day, step);
  if (waiting.length === 0) return 'No other step waits for it.';
  return waiting.length === 1 ? `Step ${waiting[0]} waits for it.` : `Steps ${sayList(waiting.map(String))} wait for it.`;
}
