import type { Session } from '../session/types.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';

const loadWords = () => import('./sayUndone.ts');
fetchWhenQuiet(loadWords);

/** Steps live with the page, so that nobody takes back what they no longer have before their eyes. */
export const NOTHING_BACK = 'Nothing of yours to take back since this page was opened: steps go when it is loaded again or closed';

export function takeBack(session: Session): void {
  if (session.undo.canTakeBack()) saying(session, 'back', session.undo.takeBack);
  else session.announce(`${NOTHING_BACK}.`);
}

export function doAgain(session: Session): void {
  if (session.undo.canDoAgain()) saying(session, 'again', session.undo.doAgain);
  else session.announce('There is nothing to do again.');
}

function saying(session: Session, how: 'back' | 'again', step: () => void): void {
  const before = session.classroom();
  step();
  const after = session.classroom();
  const shown = session.arrangement().id;
  loadWords().then(
    ({ sayUndone }) => session.announce(sayUndone(before, after, how, shown)),
    // Not on this device yet: what was done is seen, only not told in detail.
    () => session.announce(how === 'back' ? 'Taken back.' : 'Done again.'),
  );
}
