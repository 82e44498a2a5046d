import type { Report } from '#model/analysis/report.ts';
import type { Session } from './types.ts';

/** What the checks say, at a pace that can be read. */
export interface Paced {
  report(): Report | null;
  subscribe(listener: () => void): () => void;
}

/** ms between two states of the words while something is dragged. */
const PACE = 400;

const known = new WeakMap<Session, Paced>();

/**
 * The report for words and lists: while something is dragged a new one only now and then, which leaves the frames to the
 * drawing, whose marks follow each answer. As soon as it is let go they are one again.
 */
export function pacedOf(session: Session): Paced {
  const before = known.get(session);
  if (before) return before;
  const made = createPaced(session);
  known.set(session, made);
  return made;
}

function createPaced(session: Session): Paced {
  const listeners = new Set<() => void>();
  let shown: Report | null = null;
  let since = Number.NEGATIVE_INFINITY;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let stop: (() => void) | null = null;

  const isMoving = (): boolean => {
    const { preview, draft } = session.view();
    return preview !== null || draft !== null;
  };

  function follow(): void {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const now = session.report();
    if (now !== shown) since = performance.now();
    shown = now;
    for (const listener of listeners) listener();
  }

  function onSession(): void {
    const now = session.report();
    const rest = isMoving() && now !== null ? since + PACE - performance.now() : 0;
    if (rest <= 0) follow();
    else if (now !== shown) timer ??= setTimeout(follow, rest);
  }

  return {
    report: () => (isMoving() && stop ? shown : session.report()),
    subscribe(listener) {
      if (listeners.size === 0) {
        shown = session.report();
        stop = session.subscribe(onSession);
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
