import type { Report } from '#model/analysis/report.ts';
import { keptWith } from '#model/scene/kept.ts';
import type { Arrangement } from '#model/schema/types.ts';
import { sayKept } from '../text/sayKept.ts';
import { type Paced, pacedBy } from './pacedBy.ts';
import { isDragging } from './resting.ts';
import type { Kept, Session } from './types.ts';

/** ms between two states of the same words. */
const PACE = 800;
/** Moments that all of them share, ms of the page's clock: the page is laid out once for what changes together. */
const beatAfter = (at: number): number => (Math.floor(at / PACE) + 1) * PACE;
/** ms for which all has to be well before that is said. */
const SETTLED = 400;

/** While something is dragged what is read changes only now and then, which leaves the frames to the drawing. Let go, it is as it is. */
const inSteps = <T>(session: Session, read: () => T): Paced<T> =>
  pacedBy(session, read, ({ now, shownSince }) => (isDragging(session) && now !== null ? beatAfter(shownSince) : 0));

/** The report for words and lists; the marks of the drawing follow each answer. */
export const pacedReport = keptWith((session: Session): Paced<Report | null> => inSteps(session, session.report));

/** How things stand, for figures beside the drawing. */
export const pacedArrangement = keptWith((session: Session): Paced<Arrangement> => inSteps(session, session.arrangement));

/**
 * Where the work is kept: trouble, and that not all is, are said at once; that all is well when it has stayed so for a
 * moment. What comes in between is not told at every step of a drag.
 */
export const pacedKept = keptWith((session: Session): Paced<Kept> => {
  const isWell = (kept: Kept): boolean => sayKept(kept).isWell;
  return pacedBy(session, session.kept, ({ shown, shownSince, now, nowSince }) => {
    if (isWell(shown) || sayKept(now).isTrouble) return 0;
    return isWell(now) ? nowSince + SETTLED : beatAfter(shownSince);
  });
});
