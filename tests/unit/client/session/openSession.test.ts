import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Analyst } from '#client/session/analyst.ts';
import { openSession } from '#client/session/openSession.ts';
import type { Session } from '#client/session/types.ts';
import { type DeviceStore, openDeviceStore } from '#client/store/deviceStore.ts';
import { analyse, type Report } from '#model/analysis/report.ts';
import type { Classroom } from '#model/schema/types.ts';
import { furnished } from '../../../support/furnished.ts';

const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** Judges at once, in the page. */
function analystHere(): Analyst & { asked: { classroom: Classroom; arrangement: string; preview: unknown }[] } {
  const listeners = new Set<() => void>();
  let report: Report | null = null;
  const asked: { classroom: Classroom; arrangement: string; preview: unknown }[] = [];
  return {
    asked,
    ask: (classroom, arrangement, preview) => {
      asked.push({ classroom, arrangement, preview });
      report = analyse(classroom, { arrangement, rules: [] });
      for (const listener of listeners) listener();
    },
    knowMats: () => undefined,
    report: () => report,
    trouble: () => null,
    isThinking: () => false,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => listeners.clear(),
  };
}

let devices = 0;
const device = (): DeviceStore => {
  const store = openDeviceStore({ factory: new IDBFactory(), name: `session-${++devices}` });
  closing.push(() => store.close());
  return store;
};
async function open(store: DeviceStore, start?: Classroom) {
  const analyst = analystHere();
  const said: string[] = [];
  const person = { name: 'Ida Brook', initials: 'IB' };
  const session = await openSession(
    'room',
    { analyst, person, announce: (text) => said.push(text), ...(start && { start }) },
    { store, server: null, storage: null },
  );
  closing.push(() => session.close());
  return { session, analyst, said };
}
const calls = (session: Session) => {
  const listener = vi.fn();
  session.subscribe(listener);
  return listener;
};

describe('a session', () => {
  it('begins a classroom, keeps it, and opens it again without any network', async () => {
    const store = device();
    const first = await open(store, furnished());
    expect(first.session.classroom()).toEqual(furnished());
    await vi.waitFor(() => expect(first.session.kept()).toEqual({ here: 'kept', server: 'alone', waiting: 0, trouble: null }));
    await first.session.close();
    const again = await open(store);
    expect(again.session.classroom()).toEqual(furnished());
  });

  it('says in words that there is nothing to open', async () => {
    await expect(open(device())).rejects.toThrow('This classroom is not on this device, and this page came from no server');
  });

  it('opened twice at once begins the classroom once', async () => {
    const store = device();
    const start = furnished();
    const [one, other] = await Promise.all([open(store, start), open(store, start)]);
    one.session.commands.movePiece('a1', 's1', { x: 5, y: 5 });
    await vi.waitFor(() => expect(other.session.classroom()).toEqual(one.session.classroom()));
    expect(one.session.classroom().room.corners).toHaveLength(4);
    expect(one.session.arrangement().walk).toHaveLength(2);
  });

  it('asks for the checks after each change that they read, once', async () => {
    const { session, analyst } = await open(device(), furnished());
    expect(analyst.asked).toHaveLength(1);
    const changed = calls(session);
    session.commands.movePiece('a1', 's1', { x: 7, y: 7 });
    expect(analyst.asked.at(-1)?.classroom).toBe(session.classroom());
    session.setView({ preview: { piece: 's1', x: 8, y: 8, rotation: 0 } });
    session.setView({ chosen: { kind: 'piece', id: 's1' } });
    expect(analyst.asked).toHaveLength(3);
    expect(session.report()).toBe(analyst.report());
    expect(changed).toHaveBeenCalled();
  });

  it('hands out the same objects until they change', async () => {
    const { session } = await open(device(), furnished());
    const seen = () => [
      session.classroom(),
      session.arrangement(),
      session.scene(),
      session.view(),
      session.kept(),
      session.people(),
      session.report(),
    ];
    const before = seen();
    expect(seen().every((value, index) => value === before[index])).toBe(true);
    session.setView({ sheet: 'places' });
    expect(session.scene()).toBe(before[2]);
    expect(session.view()).not.toBe(before[3]);
    const view = session.view();
    const changed = calls(session);
    session.setView({ sheet: 'places' });
    expect(session.view()).toBe(view);
    expect(changed).not.toHaveBeenCalled();
  });

  it('draws the preview without writing it', async () => {
    const { session } = await open(device(), furnished());
    session.setView({ preview: { piece: 's2', x: 3333, y: 444, rotation: 90 } });
    expect(session.scene().bodyById.get('s2')).toMatchObject({ center: { x: 3333, y: 444 }, rotation: 90 });
    expect(session.arrangement().pieces[1]).toMatchObject({ x: 2500, y: 200 });
  });

  it('shows the front of the last chosen shelf, and nothing that is gone', async () => {
    const { session } = await open(device(), furnished());
    session.setView({ chosen: { kind: 'piece', id: 's1' } });
    expect(session.view().frontOf).toEqual({ piece: 's1', side: 'front' });
    session.setView({ chosen: { kind: 'piece', id: 't1' } });
    expect(session.view().frontOf).toEqual({ piece: 's1', side: 'front' });
    session.commands.putAwayPiece('a1', 's1');
    expect(session.view()).toMatchObject({ frontOf: null, chosen: { kind: 'piece', id: 't1' } });
    session.commands.putAwayPiece('a1', 't1');
    expect(session.view().chosen).toBeNull();
    session.setView({ arrangement: 'a2' });
    expect(session.arrangement().name).toBe('By the window');
    session.commands.removeArrangement('a2');
    expect(session.view().arrangement).toBe('a1');
  });

  it('shows oneself among the people here, and the piece in hand', async () => {
    const { session, said } = await open(device(), furnished());
    expect(session.people()).toMatchObject([{ name: 'Ida Brook', initials: 'IB', isMe: true, sheet: 'room', holds: null }]);
    session.setPerson({ name: 'Tam Reed', initials: 'TR' });
    expect(session.people()).toMatchObject([{ initials: 'TR' }]);
    session.setView({ preview: { piece: 's2', x: 1, y: 2, rotation: 0 } });
    await vi.waitFor(() => expect(session.people()).toMatchObject([{ holds: 's2', preview: { x: 1 } }]));
    session.announce('moved');
    expect(said).toEqual(['moved']);
  });
});
