import type { Left } from '#model/schema/types.ts';
import { dayOf, sayDay } from '../text/sayDay.ts';

/** "Left by Ida Brook on 25 November 2026 at 09:34." Says so where it is not known who or when. */
export function sayLeft({ by, at }: Pick<Left, 'by' | 'at'>): string {
  const who = by.trim() === '' ? 'by somebody who gave no name' : `by ${by.trim()}`;
  if (at === '') return `Left ${who}; when is not known.`;
  const when = dayOf(at);
  const hasTime = at.includes('T') && !Number.isNaN(when.getTime());
  const time = hasTime ? ` at ${when.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}` : '';
  return `Left ${who} on ${sayDay(at)}${time}.`;
}
