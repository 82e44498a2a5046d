import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import loadHighs from 'highs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type KeptProof, openProofMemory, type ProofMemory } from '#client/mats/proofMemory.ts';
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
const mats = (count: number, upperBound: number): Mats => ({
  count,
  upperBound,
  proven: count === upperBound,
  places: Array.from({ length: count }, (_, i) => ({ x: i, y: 0, turn: 0 })),
  tile,
});

interface FakePort {
  onmessage: ((event: MessageEvent<ProofAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  asked: ProofQuestion | null;
  isEnded: boolean;
}

/** A device of its own for each test that does not bring one. */
const device = (): ProofMemory => openProofMemory(new IDBFactory());

function opened(memory: ProofMemory = device(), change: PlainRoomChange = room) {
  const plan = planSession(change);
  const views = new Set<() => void>();
  const session: Session = {
    ...plan,
    subscribe: (listener) => {
      views.add(listener);
      const stop = plan.document.onChange(listener);
      return () => {
        views.delete(listener);
        stop();
      };
    },
    setView: (set) => {
      plan.setView(set);
      for (const listener of [...views]) listener();
    },
  };
  const known: { classroom: Classroom; arrangement: string; mats: Mats }[] = [];
  const ports: FakePort[] = [];
  const analyst = {
    knowMats: (classroom: Classroom, arrangement: string, found: Mats) => {
      known.push({ classroom, arrangement, mats: found });
    },
  };
  const begin = () => {
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
  };
  const store = createProofStore(session, analyst, begin, memory);
  const last = (): FakePort => ports.at(-1) as FakePort;
  const tell = (data: ProofAnswer): void => last().onmessage?.({ data } as MessageEvent<ProofAnswer>);
  return { session, store, said: plan.said, known, last, tell };
}

afterEach(() => vi.unstubAllGlobals());

describe('the proof of the mats on the page', () => {
  it('is worked out aside, told, and handed to the checks', async () => {
    const { session, store, said, known, last, tell } = opened();
    store.prove();
    expect(store.state()).toEqual({ at: 'proving', arrangement: 'a1', step: null, isOther: false });
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
    expect(store.state()).toEqual({ at: 'proving', arrangement: 'a1', step, isOther: false });
    store.stop();
    expect([last().isEnded, known.at(-1)?.mats]).toEqual([true, step.mats]);
    expect(said.at(-1)).toBe('Stopped. What was found until then is kept.');
  });

  it('goes on for how it was when the plan changes, says so, and is about it again when it is put back', async () => {
    const { session, store, said, last, tell, known } = opened();
    store.prove();
    const id = session.arrangement().id;
    const move = (x: number) => session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x, y: 900 }]);
    move(1300);
    expect([last().isEnded, store.state()]).toEqual([false, { at: 'proving', arrangement: 'a1', step: null, isOther: true }]);
    expect(said.at(-1)).toBe('The plan has changed. The proof goes on for how it was.');
    move(1350);
    expect(store.state()).toMatchObject({ at: 'proving', isOther: false });
    move(1310);
    tell({ mats: mats(3, 3) });
    expect(said.at(-1)).toMatch(/^As the plan was when the proof began\. Proven: exactly 3 mats/);
    // It is not told of the room as it is now, but as soon as it is put back.
    expect(known).toEqual([]);
    move(1350);
    await expect.poll(() => known.at(-1)?.mats.count).toBe(3);
  });

  it('begins anew for the changed plan when told to; what it had found of the other stays kept', async () => {
    const { session, store, last, tell, known } = opened();
    store.prove();
    const first = last();
    tell({ step: { mats: mats(3, 5), round: 2, rounds: 80 } });
    const id = session.arrangement().id;
    session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x: 1300, y: 900 }]);
    store.prove();
    expect([first.isEnded, last().isEnded, store.state()]).toEqual([
      true,
      false,
      { at: 'proving', arrangement: 'a1', step: null, isOther: false },
    ]);
    expect(last().asked?.known).toBe(null);
    store.stop();
    session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x: 1350, y: 900 }]);
    await expect.poll(() => known.at(-1)?.mats).toMatchObject({ count: 3, upperBound: 5 });
  });

  it('tells nothing of before once the plan changes', async () => {
    const { session, store, said, tell } = opened();
    const id = session.arrangement().id;
    store.prove();
    tell({ mats: mats(3, 3) });
    expect(said.at(-1)).toMatch(/^Proven: exactly 3 mats/);
    session.commands.applyEdits(id, [{ do: 'move-piece', piece: 'box', x: 1250, y: 900 }]);
    await expect.poll(() => store.state()).toEqual({ at: 'rest', word: null, isCut: false });
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

  it('brings back what was proven when the page is loaded again, without a word, and what it was when a change is taken back', async () => {
    const memory = device();
    const before = opened(memory);
    before.store.prove();
    before.tell({ mats: mats(4, 4) });
    await expect.poll(async () => (await memory.all('room'))[0]?.end).toBe('done');
    const { session, store, known } = opened(memory);
    await expect.poll(() => known).toEqual([{ classroom: session.classroom(), arrangement: 'a1', mats: mats(4, 4) }]);
    expect(store.state()).toEqual({ at: 'rest', word: null, isCut: false });
    session.commands.movePiece('a1', 'box', { x: 1300, y: 900 });
    session.commands.movePiece('a1', 'box', { x: 1350, y: 900 });
    await expect.poll(() => known.length).toBe(2);
    expect(known[1]?.classroom).toBe(session.classroom());
  });

  it('tells nothing of a room that is no longer shown when the answer about it comes', async () => {
    const memory = device();
    const before = opened(memory);
    before.store.prove();
    before.tell({ step: { mats: mats(3, 7), round: 2, rounds: 80 } });
    await expect.poll(async () => (await memory.all('room'))[0]?.end).toBe('running');
    let answer = (_: { held: LockInfo[] }): void => undefined;
    const query = vi.fn(() => new Promise<{ held: LockInfo[] }>((resolve) => (answer = resolve)));
    vi.stubGlobal('navigator', { locks: { query, request: () => Promise.resolve() } });
    const { session, store } = opened(memory);
    await expect.poll(() => query.mock.calls.length).toBe(1);
    session.commands.movePiece('a1', 'box', { x: 1300, y: 900 });
    answer({ held: [] });
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(store.state()).toEqual({ at: 'rest', word: null, isCut: false });
  });

  it('keeps nothing of another room: not with a table moved, not of another classroom', async () => {
    const memory = device();
    const before = opened(memory);
    before.store.prove();
    before.tell({ mats: mats(4, 4) });
    await expect.poll(async () => (await memory.all('room')).length).toBe(1);
    const [box] = room.pieces ?? [];
    if (!box) throw new Error('the room has a box');
    const { known } = opened(memory, { ...room, pieces: [{ ...box, x: 1351 }] });
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect([known, await memory.all('other')]).toEqual([[], []]);
  });

  it('says that it was cut off by a reload, how far it was, and goes on from there', async () => {
    const memory = device();
    const before = opened(memory);
    before.store.prove();
    before.tell({ step: { mats: mats(3, 7), round: 2, rounds: 80 } });
    await expect.poll(async () => (await memory.all('room'))[0]?.end).toBe('running');
    const { store, known, last, said, tell } = opened(memory);
    await expect
      .poll(() => store.state())
      .toEqual({
        at: 'rest',
        word: 'The proof was stopped when the page was loaded again or closed; so far at least 3 mats, at most 7.',
        isCut: true,
      });
    expect(known.at(-1)?.mats).toEqual(mats(3, 7));
    store.prove();
    expect(last().asked?.known).toEqual(mats(3, 7));
    tell({ step: { mats: mats(3, 5), round: 1, rounds: 80 } });
    store.stop();
    expect([said.at(-1), known.at(-1)?.mats]).toEqual(['Stopped. What was found until then is kept.', mats(3, 5)]);
    await expect.poll(async () => (await memory.all('room')).map(({ end }: KeptProof) => end)).toEqual(['stopped']);
  });

  it('goes on while another arrangement is shown, and its answer is there when it is shown again', async () => {
    const { session, store, said, known, tell } = opened();
    const other = session.commands.addArrangement('Other', 'a1');
    session.commands.movePiece(other, session.classroom().arrangements[1]?.pieces[0]?.id ?? '', { x: 1000, y: 900 });
    store.prove();
    session.setView({ arrangement: other });
    expect(store.state()).toMatchObject({ at: 'proving', arrangement: 'a1' });
    tell({ mats: mats(4, 4) });
    expect([said.at(-1), known]).toEqual([expect.stringMatching(/^.+\. Proven: exactly 4 mats/), []]);
    session.setView({ arrangement: 'a1' });
    await expect.poll(() => known.at(-1)).toMatchObject({ arrangement: 'a1', mats: { count: 4, proven: true } });
  });

  it('says so when this device cannot keep it', async () => {
    const refuse = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
    const { store, said, tell } = opened({ all: refuse, keep: refuse, forget: refuse });
    store.prove();
    tell({ mats: mats(4, 4) });
    await expect.poll(() => said.at(-1)).toBe('What was proven could not be kept on this device: it goes with the page.');
  });
});

describe('proofs kept on a device', () => {
  it('are the twenty latest of a classroom, one for each room; what cannot be read is left out', async () => {
    const factory = new IDBFactory();
    const memory = openProofMemory(factory);
    for (let at = 1; at <= 22; at++) await memory.keep('a', { grounds: `g${at}`, mats: mats(1, 1), end: 'done', at });
    await memory.keep('a', { grounds: 'g22', mats: mats(2, 2), end: 'done', at: 23 });
    await memory.keep('b', { grounds: 'g1', mats: { ...mats(2, 2), places: [] }, end: 'done', at: 1 });
    const kept = await memory.all('a');
    expect(kept.map(({ at }) => at).sort((p, q) => p - q)).toEqual([...Array.from({ length: 19 }, (_, i) => i + 3), 23]);
    expect(kept.find(({ grounds }) => grounds === 'g22')?.mats.count).toBe(2);
    expect(await memory.all('b')).toEqual([]);
    await memory.forget('a');
    expect(await memory.all('a')).toEqual([]);
  });
});
