import type { Mend, MendOnly, MendProgress } from '#model/analysis/mendWays/mendWays.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { planStoreOf } from '../plan/planStore.ts';
import type { Session } from '../session/types.ts';
import { whileSame } from '../session/whileSame.ts';
import { type AskedPort, askedWork } from '../worker/askedWork.ts';
import type { MendAnswer, MendQuestion } from '../worker/mendMessages.ts';
import { sayStopped, sayWhat } from './sayProgress.ts';

type MendState =
  /** `word`: what became of the last one; `only`: what it was asked for, and may be again. */
  | { readonly at: 'rest'; readonly word: string | null; readonly only: MendOnly | null }
  | { readonly at: 'looking'; readonly only: MendOnly | null; readonly progress: MendProgress | null }
  /** `isStopped`: a smaller change may exist, it was not looked for to the end. */
  | { readonly at: 'told'; readonly only: MendOnly | null; readonly mend: Mend; readonly isStopped: boolean };

export interface MendStore {
  state(): MendState;
  /** Pieces that are to stay where they are, by id. */
  kept(): readonly string[];
  /** @param only what of it, instead of every way as wide as is asked */
  look(only?: MendOnly): void;
  stop(): void;
  /** Searches again with a piece left where it is, or with it free again. */
  keep(piece: string): void;
  release(piece: string): void;
  /** Does what is proposed: one step. */
  doIt(): void;
  leaveIt(): void;
  subscribe(listener: () => void): () => void;
}

type Port = AskedPort<MendAnswer>;

const stores = new WeakMap<Session, MendStore>();

/** The search for a mend of the ways of an opened classroom. Never shared, never saved. */
export function mendStoreOf(session: Session): MendStore {
  const known = stores.get(session);
  if (known) return known;
  const store = createMendStore(session, startWorker);
  stores.set(session, store);
  return store;
}

/** What a search hangs on: when one of these is another object, its answer is no longer about this room. */
const groundsOf = ({ room, access, options, children, adults, exitRules, left }: Classroom, { id, pieces }: Arrangement): unknown[] => [
  room,
  access,
  options,
  children,
  adults,
  exitRules,
  left,
  id,
  pieces,
];

export function createMendStore(session: Session, start: () => Port): MendStore {
  const listeners = new Set<() => void>();
  let state: MendState = { at: 'rest', word: null, only: null };
  let kept: readonly string[] = [];
  let asked: MendOnly | undefined;

  function change(next: MendState): void {
    state = next;
    const edits = next.at === 'told' && next.mend.end === 'found' ? next.mend.edits : null;
    planStoreOf(session).set({ proposal: edits });
    for (const listener of listeners) listener();
  }

  const work = askedWork<MendQuestion, MendAnswer>({
    start,
    hear,
    fail: (why) =>
      rest(
        why === null
          ? 'The search cannot run in this browser. The drawing works and is kept.'
          : `The search broke (${why}). Nothing was changed.`,
      ),
  });

  /** @param isOfNow what is said is of the plan as it stands, and goes with the next change to it */
  function rest(word: string, isOfNow = false): void {
    work.end();
    if (isOfNow) grounds.take();
    else grounds.letGo();
    change({ at: 'rest', word, only: asked ?? null });
    session.announce(word);
  }

  function hear(answer: MendAnswer): void {
    if ('progress' in answer) {
      change({ at: 'looking', only: asked ?? null, progress: answer.progress });
      return;
    }
    if ('failure' in answer) {
      rest(`The search broke (${answer.failure}). Nothing was changed.`);
      return;
    }
    tellMend(answer.mend, false);
  }

  function tellMend(mend: Mend, isStopped: boolean): void {
    work.end();
    change({ at: 'told', only: asked ?? null, mend, isStopped });
    tellShort(session, mend, () => state.at === 'told' && state.mend === mend);
  }

  function stop(): void {
    if (state.at !== 'looking') return;
    const { only, progress } = state;
    if (progress?.best) tellMend(progress.best, true);
    else rest(sayStopped(session.scene(), only, progress), true);
  }

  const grounds = whileSame(
    session,
    () => groundsOf(session.classroom(), session.arrangement()),
    () =>
      state.at === 'rest'
        ? change({ ...state, word: null })
        : rest(`The plan has changed, so the ${state.at === 'looking' ? 'search was stopped' : 'proposal is gone'}. Look again.`),
    () => {
      work.end();
      listeners.clear();
    },
  );

  function look(only?: MendOnly): void {
    asked = only;
    const classroom = session.classroom();
    const arrangement = session.arrangement();
    grounds.take();
    const stays = kept.filter((id) => arrangement.pieces.some((piece) => piece.id === id));
    change({ at: 'looking', only: only ?? null, progress: null });
    session.announce(`Looking for the smallest move that widens ${sayWhat(session.scene(), only ?? null, null)}.`);
    work.ask({ classroom, options: { arrangement: arrangement.id, keep: stays, ...(only && { only }) } });
  }

  return {
    state: () => state,
    kept: () => kept,
    look,
    stop,
    keep(piece) {
      kept = [...kept.filter((id) => id !== piece), piece];
      look(asked);
    },
    release(piece) {
      kept = kept.filter((id) => id !== piece);
      change({ ...state });
    },
    doIt() {
      if (state.at !== 'told' || state.mend.end !== 'found') return;
      const { edits, moves } = state.mend;
      // The change it makes is no reason to say that the plan has changed.
      grounds.letGo();
      change({ at: 'rest', word: null, only: null });
      const isDone = session.commands.applyEdits(session.arrangement().id, edits);
      rest(
        isDone
          ? `Done: ${moves.length === 1 ? 'one piece' : `${moves.length} pieces`} moved. Take back undoes it.`
          : 'That could not be done: what it would move is gone.',
        isDone,
      );
    },
    leaveIt: () => rest('Left as it is: nothing was moved.', true),
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** For the ear: what was found gets focus and is read from there. */
function tellShort(session: Session, mend: Mend, isStill: () => boolean): void {
  if (mend.end !== 'found') session.announce(mend.end === 'fine' ? 'Every way is wide enough.' : 'No mend was found.');
  else
    import('#model/analysis/mendWays/sayMend.ts').then(
      ({ sayMove }) => {
        if (isStill()) session.announce(`Found: ${mend.moves.map((move) => sayMove(session.scene(), move)).join('; ')}.`);
      },
      // Not on this device yet: what moves is drawn in pencil.
      () => session.announce('A mend was found.'),
    );
}

function startWorker(): Port {
  return new Worker(new URL('../worker/mendWorker.ts', import.meta.url), { type: 'module', name: 'mend' });
}
