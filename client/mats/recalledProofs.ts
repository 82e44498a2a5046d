import type { Mats } from '#model/measures/mats.ts';
import type { Analyst } from '../session/analyst.ts';
import type { Session } from '../session/types.ts';
import { groundsKey, matGrounds } from './matGrounds.ts';
import type { KeptProof, ProofMemory } from './proofMemory.ts';

/** ms of rest before a changed room is looked up: what it reads is made into a key, which no step of a drag waits for. */
const QUIET = 300;

/**
 * Hands what was proven of a room to the checks again whenever that room is back: after the page was loaded again, with
 * another arrangement and back, with a change taken back. And keeps what is being proven.
 * @param tell what a proof had come to that was cut off and that nobody goes on with; null: nothing of this room was
 */
export function recalledProofs(
  session: Session,
  analyst: Pick<Analyst, 'knowMats'>,
  memory: ProofMemory,
  tell: (cut: Mats | null) => void,
) {
  const known = new Map<string, KeptProof>();
  let shown: readonly unknown[] = [];
  let shownId = session.arrangement().id;
  let turn = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running: { readonly key: string; readonly release: () => void } | null = null;
  let isClosed = false;

  const groundsNow = (): readonly unknown[] => matGrounds(session.classroom(), session.arrangement().pieces);
  const found = (): KeptProof | undefined => (known.size === 0 ? undefined : known.get(groundsKey(groundsNow())));

  async function recall(): Promise<void> {
    clearTimeout(timer);
    if (isClosed) return;
    turn++;
    const mine = turn;
    const proof = found();
    if (proof) analyst.knowMats(session.classroom(), session.arrangement().id, proof.mats);
    const isCut = proof?.end === 'running' && running === null && !(await isHeld(proof.grounds));
    if (!isClosed && mine === turn) tell(isCut ? proof.mats : null);
  }

  const follow = (): void => {
    const now = groundsNow();
    if (now.every((value, i) => value === shown[i])) return;
    const { id } = session.arrangement();
    const isOtherDrawing = id !== shownId;
    shown = now;
    shownId = id;
    // What is still being asked of the room as it was is told no more.
    turn++;
    clearTimeout(timer);
    timer = setTimeout(() => void recall(), isOtherDrawing && known.size > 0 ? 0 : QUIET);
  };
  shown = groundsNow();
  const unsubscribe = session.subscribe(follow);

  memory.all(session.id).then(
    (proofs) => {
      for (const proof of proofs) if (!known.has(proof.grounds)) known.set(proof.grounds, proof);
      if (proofs.length > 0) void recall();
    },
    // A device that keeps nothing has nothing to bring back; a new proof says so when it cannot be kept.
    () => undefined,
  );

  function note(mats: Mats, end: KeptProof['end']): void {
    if (!running) return;
    const { key } = running;
    const before = known.get(key);
    const proof: KeptProof = { grounds: key, mats, end, at: Date.now() };
    known.set(key, proof);
    if (end !== 'running' && groundsKey(groundsNow()) === key) analyst.knowMats(session.classroom(), session.arrangement().id, mats);
    if (before?.end === end && before.mats.count === mats.count && before.mats.upperBound === mats.upperBound) return;
    memory.keep(session.id, proof).catch(() => {
      if (end !== 'running') session.announce('What was proven could not be kept on this device: it goes with the page.');
    });
  }

  return {
    /** A proof of the shown room begins. @returns what is known of it; null: nothing */
    begin(): Mats | null {
      running?.release();
      const key = groundsKey(groundsNow());
      running = { key, release: hold(key) };
      return known.get(key)?.mats ?? null;
    },
    note,
    /** The proof has ended; where nothing more was found, as it stood. */
    end(end: KeptProof['end']): void {
      if (!running) return;
      const last = known.get(running.key);
      if (last?.end === 'running') note(last.mats, end);
      running.release();
      running = null;
    },
    close(): void {
      isClosed = true;
      clearTimeout(timer);
      unsubscribe();
      running?.release();
    },
  };
}

// One tab proves, another of the same browser shows the same room: told by a lock, where there are such.
const lockName = (key: string): string => `lowshelf-proof:${key}`;
const locksHere = (): LockManager | undefined => (globalThis.navigator as Partial<Navigator> | undefined)?.locks;

function hold(key: string): () => void {
  let release = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  locksHere()
    ?.request(lockName(key), { mode: 'shared' }, () => held)
    .catch(() => undefined);
  return release;
}

async function isHeld(key: string): Promise<boolean> {
  const { held } = (await locksHere()?.query()) ?? {};
  return held?.some(({ name }) => name === lockName(key)) ?? false;
}
