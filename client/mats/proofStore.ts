import type { MatProofStep } from '#model/measures/matProof.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import type { Analyst } from '../session/analyst.ts';
import type { Session } from '../session/types.ts';
import { sayCount } from '../text/sayCount.ts';
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

type Port = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<ProofAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

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
  let port: Port | null = null;
  let asked: { classroom: Classroom; arrangement: Arrangement } | null = null;

  function change(next: ProofState): void {
    state = next;
    for (const listener of listeners) listener();
  }

  function end(): void {
    port?.terminate();
    port = null;
  }

  function rest(word: string | null): void {
    end();
    change({ at: 'rest', word });
    if (word !== null) session.announce(word);
  }

  function know(mats: Mats): void {
    if (asked) analyst.knowMats(asked.classroom, asked.arrangement.id, mats);
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

  const unsubscribe = session.subscribe(() => {
    if (state.at === 'rest' && state.word === null) return;
    if (!asked) return;
    const before = matGrounds(asked.classroom, asked.arrangement.pieces);
    const now = matGrounds(session.classroom(), session.arrangement().pieces);
    if (now.every((value, i) => value === before[i])) return;
    rest(state.at === 'proving' ? 'The plan has changed, so the proof was stopped.' : null);
  });

  // A closed classroom asks for nothing more.
  session.document.doc.on('destroy', () => {
    unsubscribe();
    end();
    listeners.clear();
  });

  return {
    state: () => state,
    prove() {
      end();
      asked = { classroom: session.classroom(), arrangement: session.arrangement() };
      change({ at: 'proving', step: null });
      session.announce('Proving how many mats lie on the floor at once.');
      try {
        port = start();
      } catch {
        rest('The proof cannot run in this browser. What was known before still stands.');
        return;
      }
      port.onmessage = ({ data }) => hear(data);
      port.onerror = (event) => {
        event.preventDefault();
        rest(`The proof broke (${event.message || 'the browser refused'}). What was known before still stands.`);
      };
      port.postMessage({ classroom: asked.classroom, arrangement: asked.arrangement.id } satisfies ProofQuestion);
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
