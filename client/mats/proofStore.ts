import type { MatProofStep } from '#model/measures/matProof.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Analyst } from '../session/analyst.ts';
import type { Session } from '../session/types.ts';
import { whileSame } from '../session/whileSame.ts';
import { sayCount } from '../text/sayCount.ts';
import { type AskedPort, askedWork } from '../worker/askedWork.ts';
import type { ProofAnswer, ProofQuestion } from '../worker/proofMessages.ts';
import { matGrounds } from './matGrounds.ts';

type ProofState =
  /** `word`: what became of the last one. */
  { readonly at: 'rest'; readonly word: string | null } | { readonly at: 'proving'; readonly step: MatProofStep | null };

export interface ProofStore {
  state(): ProofState;
  prove(): void;
  /** What is known by then is kept. */
  stop(): void;
  subscribe(listener: () => void): () => void;
}

type Port = AskedPort<ProofAnswer>;

const stores = new WeakMap<Session, ProofStore>();

/** The proof of the mats of an opened classroom. Never shared, never saved: what it found goes to the checks. */
export function proofStoreOf(session: Session, analyst: Pick<Analyst, 'knowMats'>): ProofStore {
  const known = stores.get(session);
  if (known) return known;
  const store = createProofStore(session, analyst, startWorker);
  stores.set(session, store);
  return store;
}

export function createProofStore(session: Session, analyst: Pick<Analyst, 'knowMats'>, start: () => Port): ProofStore {
  const listeners = new Set<() => void>();
  let state: ProofState = { at: 'rest', word: null };
  let asked: ProofQuestion | null = null;

  function change(next: ProofState): void {
    state = next;
    for (const listener of listeners) listener();
  }

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
    change({ at: 'rest', word });
    if (word !== null) session.announce(word);
  }

  function know(mats: Mats): void {
    if (asked) analyst.knowMats(asked.classroom, asked.arrangement, mats);
  }

  function hear(answer: ProofAnswer): void {
    if ('step' in answer) {
      change({ at: 'proving', step: answer.step });
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
    know(answer.mats);
    rest(sayOutcome(answer.mats));
  }

  const grounds = whileSame(
    session,
    () => matGrounds(session.classroom(), session.arrangement().pieces),
    () => rest(state.at === 'proving' ? 'The plan has changed, so the proof was stopped.' : null),
    () => {
      work.end();
      listeners.clear();
    },
  );

  return {
    state: () => state,
    prove() {
      asked = { classroom: session.classroom(), arrangement: session.arrangement().id };
      grounds.take();
      change({ at: 'proving', step: null });
      session.announce('Proving how many mats lie on the floor at once.');
      work.ask(asked);
    },
    stop() {
      if (state.at !== 'proving') return;
      if (state.step) know(state.step.mats);
      rest('Stopped. What was found until then is kept.');
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

function startWorker(): Port {
  return new Worker(new URL('../worker/proofWorker.ts', import.meta.url), { type: 'module', name: 'proof' });
}
