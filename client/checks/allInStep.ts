import type { Session } from '../session/types.ts';
import { sayCount } from '../text/sayCount.ts';
import { mendsOfOrder } from './mendsOfOrder.ts';

/** So many mends one after the other: more is another arrangement of the shelves. */
const MOST = 30;
/** ms after which nobody waits for the checks */
const TOO_LATE = 20_000;

/**
 * Does what the checks propose for the order, one after the other: each mend is one that they have looked at as things
 * stand by then. All of it is one step to take back. Ends where somebody changes the arrangement meanwhile.
 * @param onDone told after each how many are done
 */
export async function putAllInStep(session: Session, onDone: (count: number) => void): Promise<void> {
  const tried = new Set<string>();
  const moved = new Set<string>();
  let count = 0;
  let end: 'all' | 'changed' | 'late' = 'all';
  session.undo.beginStep();
  try {
    let stands = session.arrangement();
    while (tried.size < MOST) {
      if (!(await hasLooked(session))) end = 'late';
      else if (session.arrangement() !== stands) end = 'changed';
      if (end !== 'all') break;
      const next = mendsOfOrder(session.report()?.findings ?? []).find(({ key }) => !tried.has(key));
      if (!next?.fix) break;
      tried.add(next.key);
      if (!session.commands.applyEdits(stands.id, next.fix.edits)) continue;
      stands = session.arrangement();
      for (const edit of next.fix.edits) if (edit.do === 'place') moved.add(edit.placement.material);
      onDone(++count);
    }
  } finally {
    session.undo.endStep();
  }
  session.announce(sayEnd(session, end, count, moved.size));
}

function sayEnd(session: Session, end: 'all' | 'changed' | 'late', count: number, moved: number): string {
  if (count === 0) return 'Nothing was moved.';
  const done = `Done: ${sayCount(moved, 'tray stands', 'trays stand')} elsewhere now, in one step to take back.`;
  if (end === 'changed') return `${done} Somebody changed the shelves meanwhile, so it ended there.`;
  if (end === 'late') return `${done} The checks did not answer in time, so it ended there.`;
  const left = (session.report()?.findings ?? []).filter(({ rule, leftReason }) => rule === 'order/sequence' && leftReason === null).length;
  return left === 0
    ? `${done} Every shelf is in order.`
    : `${done} ${sayCount(left, 'thing', 'things')} out of order ${left === 1 ? 'stays' : 'stay'}.`;
}

/** Resolves once the checks have looked at things as they stand; false: they did not in time. */
const hasLooked = (session: Session): Promise<boolean> =>
  new Promise((resolve) => {
    if (!session.isThinking()) return resolve(true);
    const end = (isDone: boolean): void => {
      clearTimeout(timer);
      stop();
      resolve(isDone);
    };
    const timer = setTimeout(() => end(false), TOO_LATE);
    const stop = session.subscribe(() => {
      if (!session.isThinking()) end(true);
    });
  });
