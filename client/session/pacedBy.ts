import type { Session } from './types.ts';

/** Something of a session that is shown later than it is known. */
export interface Paced<T> {
  value(): T;
  subscribe(listener: () => void): () => void;
}

/** What is shown and what is known, and since when (ms of the page's clock). */
export interface PacedMoment<T> {
  readonly shown: T;
  readonly shownSince: number;
  readonly now: T;
  readonly nowSince: number;
}

/** @param until when what is known may be shown (ms of the page's clock); asked again whenever something changes */
export function pacedBy<T>(session: Session, read: () => T, until: (moment: PacedMoment<T>) => number): Paced<T> {
  const listeners = new Set<() => void>();
  let moment: PacedMoment<T> = { shown: read(), shownSince: Number.NEGATIVE_INFINITY, now: read(), nowSince: Number.NEGATIVE_INFINITY };
  let timer: ReturnType<typeof setTimeout> | null = null;
  /** When the timer looks again, ms of the page's clock. */
  let due = 0;
  let stop: (() => void) | null = null;

  function look(): void {
    const now = read();
    if (now !== moment.now) moment = { ...moment, now, nowSince: performance.now() };
    const at = now === moment.shown ? 0 : until(moment);
    const rest = at - performance.now();
    // It is looked several times a frame; mostly the next moment stays the same.
    if (timer !== null && rest > 0 && at === due) return;
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (now === moment.shown) return;
    if (rest > 0) {
      due = at;
      timer = setTimeout(onTime, rest);
      return;
    }
    moment = { ...moment, shown: now, shownSince: performance.now() };
    for (const listener of listeners) listener();
  }

  function onTime(): void {
    timer = null;
    look();
  }

  return {
    value: () => (stop ? moment.shown : read()),
    subscribe(listener) {
      if (listeners.size === 0) {
        moment = { ...moment, shown: read(), now: read() };
        stop = session.subscribe(look);
      }
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0) return;
        stop?.();
        stop = null;
        if (timer !== null) clearTimeout(timer);
        timer = null;
      };
    },
  };
}
