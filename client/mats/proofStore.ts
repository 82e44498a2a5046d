import type { MatProofStep } from '#model/measures/matProof.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Analyst } from '../session/analyst.ts';
import type { Session } from '../session/types.ts';
import { whileSame } from '../session/whileSame.ts';
import { sayCount } from '../text/sayCount.ts';
import { type AskedPort, askedWork } from '../worker/askedWork.ts';
import type { ProofAnswer, ProofQuestion } from '../worker/proofMessages.ts';
import { groundsKey, matGrounds } from './matGrounds.ts';
import { openProofMemory, type ProofMemory } from './proofMemory.ts';
import { recalledProofs } from './recalledProofs.ts';

type ProofState =
  | {
      readonly at: 'rest';
      /** What became of the last one. */
      readonly word: string | null;
      /** It was cut off, and can be gone on with. */
      readonly isCut: boolean;
    }
  | {
      readonly at: 'proving';
      readonly arrangement: string;
      readonly step: MatProofStep | null;
      /** The plan is not as it was when the proof began; it goes on for how it was. */
      readonly isOther: boolean;
    };

export interface ProofStore {
  state(): ProofState;
  prove(): void;
  /** What is known by then is kept. */
  stop(): void;
  subscribe(listener: () => void): () => void;
}

type Port = AskedPort<ProofAnswer>;

const stores = new WeakMap<Session, ProofStore>();

/** The proof of the mats of an opened classroom. Never shared: what it found goes to the checks, and is kept on this device. */
export function proofStoreOf(session: Session, analyst: Pick<Analyst, 'knowMats'>): ProofStore {
  const known = stores.get(session);
  if (known) return known;
  const store = createProofStore(session, analyst, startWorker, openProofMemory());
  stores.set(session, store);
  return store;
}

export function createProofStore(session: Session, analyst: Pick<Analyst, 'knowMats'>, start: () => Port, memory: ProofMemory): ProofStore {
  const listeners = new Set<() => void>();
  let state: ProofState = { at: 'rest', word: null, isCut: false };
  let asked: ProofQuestion | null = null;
  /** `groundsKey` of what is being proven */
  let askedKey = '';

  function change(next: ProofState): void {
    state = next;
    for (const listener of listeners) listener();
  }

  const recalled = recalledProofs(session, analyst, memory, (cut) => {
    if (state.at === 'proving') return;
    if (cut) change({ at: 'rest', word: sayCut(cut), isCut: true });
    else if (state.word !== null || state.isCut) change({ at: 'rest', word: null, isCut: false });
  });

  const work = askedWork<ProofQuestion, ProofAnswer>({
    start,
    hear,
    fail: (why) =>
      rest(
        why === null
          ? 'The proof cannot run in this browser. What was known before still stands.'
          : `The proof broke (${why}). What was known before still stands.`,
      ),
  });

  function rest(word: string | null): void {
    work.end();
    grounds.letGo();
    recalled.end('stopped');
    change({ at: 'rest', word, isCut: false });
    if (word !== null) session.announce(word);
  }

  function hear(answer: ProofAnswer): void {
    if ('step' in answer) {
      recalled.note(answer.step.mats, 'running');
      if (asked) change({ at: 'proving', arrangement: asked.arrangement, step: answer.step, isOther: isOther() });
      return;
    }
    if ('failure' in answer) {
      rest(`The proof broke (${answer.failure}). What was known before still stands.`);
      return;
    }
    if (!answer.mats) {
      rest('The walls do not hold, so nothing can be proven of the floor.');
      return;
    }
    recalled.note(answer.mats, 'done');
    const then = isOther() ? 'As the plan was when the proof began. ' : '';
    const isShown = asked?.arrangement === session.arrangement().id;
    const name = session.classroom().arrangements.find(({ id }) => id === asked?.arrangement)?.name;
    rest(`${isShown || !name ? '' : `${name}. `}${then}${sayOutcome(answer.mats)}`);
  }

  /** Of the arrangement that is being proven, also while another is shown. */
  const piecesAsked = () => session.classroom().arrangements.find(({ id }) => id === asked?.arrangement)?.pieces;
  const groundsAsked = () => matGrounds(session.classroom(), piecesAsked());
  /** By what they read: what was moved and put back is as it was. */
  const isOther = (): boolean => groundsKey(groundsAsked()) !== askedKey;

  function follow(): void {
    if (state.at !== 'proving') return;
    // What comes after this is looked at as well: it may be put back.
    grounds.take();
    const now = isOther();
    if (now === state.isOther) return;
    change({ ...state, isOther: now });
    session.announce(
      now ? 'The plan has changed. The proof goes on for how it was.' : 'The plan is as it was: the proof is about it again.',
    );
  }

  const grounds = whileSame(session, groundsAsked, follow, () => {
    work.end();
    recalled.close();
    listeners.clear();
  });

  return {
    state: () => state,
    prove() {
      const { id } = session.arrangement();
      // What one that is given up has found stays kept for its own room.
      work.end();
      recalled.end('stopped');
      asked = { classroom: session.classroom(), arrangement: id, known: recalled.begin() };
      askedKey = groundsKey(groundsAsked());
      grounds.take();
      change({ at: 'proving', arrangement: id, step: null, isOther: false });
      session.announce('Proving how many mats lie on the floor at once.');
      work.ask(asked);
    },
    stop() {
      if (state.at === 'proving') rest('Stopped. What was found until then is kept.');
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** What came of it, in a sentence. */
export function sayOutcome({ count, upperBound, proven }: Mats): string {
  if (proven) return `Proven: exactly ${sayCount(count, 'mat')} on the floor at once, with every way kept.`;
  return `Not proven to the end: at least ${sayCount(count, 'mat')}, at most ${upperBound}, with every way kept.`;
}

const sayCut = ({ count, upperBound }: Mats): string =>
  `The proof was stopped when the page was loaded again or closed; so far at least ${sayCount(count, 'mat')}, at most ${upperBound}.`;

function startWorker(): Port {
  return new Worker(new URL('../worker/proofWorker.ts', import.meta.url), { type: 'module', name: 'proof' });
}
