import { announcer } from '../session/announcer.ts';
import type { Session } from '../session/types.ts';
import { describeItem } from './describe.ts';
import type { Item } from './items.ts';

/** ms after which nobody waits for what the checks find of a step */
const TOO_LATE = 5000;

const waiting = new WeakMap<Session, () => void>();

/**
 * Says what a thing is and where it stands, and what is found of it: at once where the checks have looked, otherwise as
 * soon as they have, unless something else was said or it is no longer chosen by then.
 */
export function tellItem(session: Session, item: Item, rest = ''): void {
  waiting.get(session)?.();
  const words = (): string => `${describeItem(session, item)}${rest === '' ? '' : `. ${rest}`}`;
  const said = words();
  session.announce(said);
  if (!session.isThinking()) return;
  const { sequence } = announcer.latest();
  const timer = setTimeout(end, TOO_LATE);
  const stop = session.subscribe(() => {
    const isPast = announcer.latest().sequence !== sequence || session.view().chosen?.id !== item.id;
    if (!isPast && session.isThinking()) return;
    end();
    if (!isPast && words() !== said) session.announce(words());
  });
  function end(): void {
    clearTimeout(timer);
    stop();
    waiting.delete(session);
  }
  waiting.set(session, end);
}
