import type { Kept } from '../session/types.ts';
import { sayCount } from './sayCount.ts';

export interface KeptWords {
  readonly text: string;
  /** All is where it should be: the tick may stand. */
  readonly isWell: boolean;
  readonly isTrouble: boolean;
}

/** Where the classroom is, told truthfully. */
export function sayKept(kept: Kept): KeptWords {
  const why = kept.trouble ? `: ${kept.trouble}` : '';
  if (kept.here === 'failed') return { text: `not kept on this device${why}`, isWell: false, isTrouble: true };
  if (kept.server === 'refused') return { text: `kept here, the server refused${why}`, isWell: false, isTrouble: true };
  if (kept.here === 'not-yet') return { text: 'not kept yet', isWell: false, isTrouble: false };
  if (kept.here === 'keeping') return { text: 'being kept …', isWell: false, isTrouble: false };
  const waiting = kept.waiting === 0 ? '' : `: ${sayCount(kept.waiting, 'change')}`;
  switch (kept.server) {
    case 'saved':
      return { text: 'here and shared', isWell: true, isTrouble: false };
    case 'saving':
      return { text: `kept here, sharing${waiting}`, isWell: false, isTrouble: false };
    case 'offline':
      // Nothing of ours waits, but what others do does not come in.
      if (kept.waiting === 0) return { text: 'kept here, no server in reach', isWell: false, isTrouble: false };
      return { text: `kept here, not yet shared${waiting}`, isWell: false, isTrouble: false };
    case 'alone':
      return { text: 'kept here only', isWell: true, isTrouble: false };
  }
}
