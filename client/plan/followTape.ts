import type { Session } from '#client/session/types.ts';
import { whileSame } from '#client/session/whileSame.ts';
import { lower, nameOfItem } from './describe.ts';
import type { Item } from './items.ts';
import { planStoreOf } from './planStore.ts';
import { outlineOf } from './tapeBetween.ts';

/** ms of rest before the way is looked for again, so that it is not asked for at each step of somebody's slide. */
const QUIET = 300;

const followers = new WeakMap<Session, () => void>();

/**
 * Keeps what the tape says true: where a thing it lies on moves it comes off, where something else moves the way is
 * looked for again. Called whenever an end was laid.
 */
export function followTape(session: Session, findWayAgain: () => void): void {
  let follow = followers.get(session);
  if (!follow) {
    follow = createFollower(session, findWayAgain);
    followers.set(session, follow);
  }
  follow();
}

function createFollower(session: Session, findWayAgain: () => void): () => void {
  const store = planStoreOf(session);
  let laid: readonly string[] = [];
  let shown = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const linesNow = (): readonly string[] => store.state().tapeOn.map((on) => JSON.stringify(on && (outlineOf(session, on)?.sides ?? null)));

  function onOther(): void {
    clearTimeout(timer);
    const { tape, tapeOn } = store.state();
    if (tape.length === 0) return;
    const now = linesNow();
    const moved = tapeOn.find((_, i) => now[i] !== laid[i]);
    if (moved || session.arrangement().id !== shown) {
      store.set({ tape: [], tapeOn: [], tapeEdge: null, tapeWay: null });
      const why = moved && session.arrangement().id === shown ? sayMoved(session, moved) : 'Another plan is shown';
      session.announce(`${why}. Lay the tape again.`);
      return;
    }
    grounds.take();
    if (tape.length < 2) return;
    // Another array: what is on its way for the plan as it was is dropped.
    store.set({ tape: [...tape], tapeWay: null });
    timer = setTimeout(findWayAgain, QUIET);
  }

  const grounds = whileSame(
    session,
    () => [session.classroom().room, session.arrangement().id, session.arrangement().pieces],
    onOther,
    () => clearTimeout(timer),
  );

  return () => {
    clearTimeout(timer);
    laid = linesNow();
    shown = session.arrangement().id;
    grounds.take();
  };
}

function sayMoved(session: Session, item: Item): string {
  if (!outlineOf(session, item)) return 'What the tape lay on is gone';
  return `The tape lay on ${lower(nameOfItem(session, item))}, which is otherwise now`;
}
