import { useEffect } from 'react';
import { useSession } from '../session/hooks.ts';
import type { Session } from '../session/types.ts';
import { fetchWhenQuiet } from '../session/whenQuiet.ts';

const loadWords = () => import('./sayUndone.ts');
fetchWhenQuiet(loadWords);

/** Steps live with the page, so that nobody takes back what they no longer have before their eyes. */
export const NOTHING_BACK = 'There is nothing of yours to take back: steps are kept until the page is loaded again or closed';

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

/** Ctrl+Z takes back your own last step, Ctrl+Shift+Z or Ctrl+Y does it again; typing in a field keeps its own. */
export function useUndoKeys(): void {
  const session = useSession();
  useEffect(() => {
    function onKey(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) doAgain(session);
      else takeBack(session);
    }
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [session]);
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.isContentEditable || target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && target.type !== 'checkbox')
  );
}
