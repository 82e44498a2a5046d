import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { createProofStore, sayOutcome } from '#client/mats/proofStore.ts';
import type { Session } from '#client/session/types.ts';
import { proveAtDesk } from '#client/worker/proofDesk.ts';
import type { ProofAnswer, ProofQuestion } from '#client/worker/proofMessages.ts';
import { pickWith } from '#model/geometry/pickMost.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { PlainRoomChange } from '#tests/support/plainRoom.ts';
import { planSession } from '../plan/planSession.ts';

/** 2700 x 1800 mm: two mats of 1200 along and two of 750 across, with gaps of 300, fill it. A small box can be moved. */
const room: PlainRoomChange = {
  room: {
    corners: [
      { id: 'c1', x: 0, y: 0 },
      { id: 'c2', x: 2700, y: 0 },
      { id: 'c3', x: 2700, y: 1800 },
      { id: 'c4', x: 0, y: 1800 },
    ],
    openings: [],
  },
  floorWork: { mat: { width: 1200, depth: 750 }, gap: 300, wanted: 4 },
  pieces: [{ id: 'box', kind: 'other', x: 1350, y: 900, width: 100, depth: 100, height: 400 }],
};
const tile = { width: 1200, depth: 750, gap: 300 };
const mats = (count: number, upperBound: number): Mats => ({ count, upperBound, proven: count === upperBound, places: [], tile });

interface FakePort {
  onmessage: ((event: MessageEvent<ProofAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  asked: ProofQuestion | null;
  isEnded: boolean;
}

function opened() {
  const plan = planSession(room);
  const session: Session = { ...plan, subscribe: (listener) => plan.document.onChange(listener) };
  const known: { classroom: Classroom; arrangement: string; mats: Mats }[] = [];
  const ports: FakePort[] = [];
  const analyst = {
    knowMats: (classroom: Classroom, arrangement: string, found: Mats) => {
      known.push({ classroom, arrangement, mats: found });
    },
  };
  const store = createProofStore(session, analyst, () => {
    const port: FakePort = { onmessage: null, onerror: null, asked: null, isEnded: false };
    ports.push(port);
    return Object.assign(port, {
      postMessage: (question: ProofQuestion) => {
        port.asked = structuredClone(question);
      },
      terminate: () => {
        port.isEnded = true;
      },
    });
  });
  const last = (): FakePort => ports.at(-1) as FakePort;
  const tell = (data: ProofAnswer): void => last().onmessage?.({ data } as MessageEvent<ProofAnswer>);
  return { session, store, said: plan.said, known, last, tell };
}

describe('the proof of the mats on the page', () => {
  it('is worked out aside, told, and handed to the checks', async () => {
    const { session, store, said, known, last, tell } = opened();
    store.prove();
    expect(store.state()).toEqual({ at: 'proving', step: null });
    const { asked } = last();
    if (!asked) throw new Error('nothing was asked');
    const highs = await loadHighs();
    await proveAtDesk(
      asked,
      async () => pickWith(highs),
      (answer) => tell(structuredClone(answer)),
    );
    expect(known.at(-1)).toMatchObject({ arrangement: session.arrangement().id, mats: { count: 4, upperBound: 4, proven: true } });
    expect(known.at(-1)?.classroom).toBe(session.classroom());
    expect(said.at(-1)).toBe('Proven: exactly 4 mats on the floor at once, with every way kept.');
    expect(last().isEnded).toBe(true);
  });

  it('keeps what is known when it is stopped', () => {
    const { store, said, known, last, tell } = opened();
    store.prove();
    const step = { mats: mats(3, 5), round: 2, rounds: 80 };
    tell({ step });
    expect(store.state()).toEqual({ at: 'proving', step });
    store.stop();
    expect([last().isEnded, known.at(-1)?.mats]).toEqual([true, step.mats]);
    expect(said.at(-1)).toBe('Stopped. What was found until then is kept.');
  });

  it('stops and says so when the plan changes; what was proven before is no longer told', () => {
    const { session, store, said, last, tell, known } = opened();
    store.prove();
    const id = session.arrangement().id;
    session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x: 1300, y: 900 }]);
    expect([last().isEnded, store.state(), known]).toEqual([
      true,
      { at: 'rest', word: 'The plan has changed, so the proof was stopped.' },
      [],
    ]);
    store.prove();
    tell({ mats: mats(3, 3) });
    expect(said.at(-1)).toMatch(/^Proven: exactly 3 mats/);
    session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x: 1250, y: 900 }]);
    expect(store.state()).toEqual({ at: 'rest', word: null });
  });

  it.each<[string, (opened_: ReturnType<typeof opened>) => void, RegExp]>([
    [
      'breaks',
      ({ tell }) => tell({ failure: 'out of memory' }),
      /^The proof broke \(out of memory\)\. What was known before still stands\.$/,
    ],
    [
      'cannot be loaded',
      ({ last }) => last().onerror?.({ message: '', preventDefault: () => undefined } as ErrorEvent),
      /^The proof broke \(the browser refused\)/,
    ],
    ['finds walls that do not hold', ({ tell }) => tell({ mats: null }), /^The walls do not hold/],
    ['comes to no end', ({ tell }) => tell({ mats: mats(3, 5) }), /^Not proven to the end: at least 3 mats, at most 5/],
  ])('says so when it %s', (_, happen, words) => {
    const room_ = opened();
    room_.store.prove();
    happen(room_);
    expect(room_.store.state()).toMatchObject({ at: 'rest', word: expect.stringMatching(words) });
    expect(room_.last().isEnded).toBe(true);
  });

  it('says one mat as one', () => {
    expect(sayOutcome(mats(1, 1))).toBe('Proven: exactly 1 mat on the floor at once, with every way kept.');
  });
});
