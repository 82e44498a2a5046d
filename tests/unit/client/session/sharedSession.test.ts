import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { type OpenSeams, openSession } from '#client/session/openSession.ts';
import { type DeviceStore, openDeviceStore } from '#client/store/deviceStore.ts';
import type { Classroom } from '#model/schema/types.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { silentAnalyst } from '#tests/support/quietDevice.ts';
import { furnished } from '../../../support/furnished.ts';
import { startServer } from '../../../support/server/startServer.ts';

const ROOM = 'F234567890123456789012';
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});
let devices = 0;
function device(): DeviceStore {
  const store = openDeviceStore({ factory: new IDBFactory(), name: `shared-${++devices}` });
  closing.push(() => store.close());
  return store;
}
async function open(store: DeviceStore, server: string, start?: Classroom, seams: OpenSeams = {}) {
  const session = await openSession(
    ROOM,
    { analyst: silentAnalyst, person: { name: 'Ida Brook', initials: 'IB' }, announce: () => undefined, ...(start && { start }) },
    { store, server, storage: null, WebSocket: WebSocket as unknown as NonNullable<OpenSeams['WebSocket']>, ...seams },
  );
  closing.push(() => session.close());
  return session;
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 6_000, interval: 5 });

describe('two tablets and a server', () => {
  it('share a classroom: begun on one, opened by its address on the other', async () => {
    const server = await startServer();
    closing.push(() => server.close());
    const one = await open(device(), server.socket, furnished());
    await soon(() => expect(one.kept()).toEqual({ here: 'kept', server: 'saved', waiting: 0, trouble: null }));
    const other = await open(device(), server.socket);
    expect(other.classroom()).toEqual(one.classroom());
    await soon(() =>
      expect(
        one
          .people()
          .map(({ isMe }) => isMe)
          .sort(),
      ).toEqual([false, true]),
    );
    other.setView({ preview: { piece: 's1', x: 10, y: 20, rotation: 0 } });
    await soon(() => expect(one.people().find(({ isMe }) => !isMe)).toMatchObject({ holds: 's1', preview: { x: 10, y: 20 } }));
    other.commands.movePiece('a1', 's1', { x: 10, y: 20 });
    other.setView({ preview: null });
    await soon(() => expect(one.classroom()).toEqual(other.classroom()));
    await soon(() => expect(one.people().find(({ isMe }) => !isMe)?.holds).toBeNull());
    // Chosen is held too, until it is let go or taken away.
    other.setView({ chosen: { kind: 'piece', id: 's2' } });
    await soon(() => expect(one.people().find(({ isMe }) => !isMe)).toMatchObject({ holds: 's2', preview: null, initials: 'IB' }));
    one.commands.putAwayPiece('a1', 's2');
    await soon(() => expect(one.people().find(({ isMe }) => !isMe)?.holds).toBeNull());
    await other.close();
    await soon(() => expect(one.people()).toHaveLength(1));
  });

  it('work apart while the server is gone, and agree when it is back', async () => {
    const storage = memoryStorage();
    const first = await startServer({ storage });
    const here = device();
    const one = await open(here, first.socket, furnished());
    const other = await open(device(), first.socket);
    await soon(() => expect(one.kept().server).toBe('saved'));
    await first.close();
    await soon(() => expect([one.kept().server, other.kept().server]).toEqual(['offline', 'offline']));
    one.commands.changePiece('a1', 's1', { name: 'moved apart' });
    other.commands.putAwayPiece('a1', 's2');
    await soon(() => expect(one.kept()).toMatchObject({ here: 'kept', server: 'offline', waiting: 1 }));
    // A reload without the server: the device's copy opens at once.
    await one.close();
    const again = await open(here, first.socket);
    expect(again.arrangement().pieces[0]?.name).toBe('moved apart');
    const second = await startServer({ storage, port: first.port });
    closing.push(() => second.close());
    await soon(() => expect([again.kept().server, other.kept().server]).toEqual(['saved', 'saved']));
    await soon(() => expect(other.classroom()).toEqual(again.classroom()));
    expect(again.arrangement().pieces.map(({ id, name }) => [id, name])).toEqual([
      ['s1', 'moved apart'],
      ['t1', ''],
    ]);
  });

  it('say in words that there is no such classroom, or no server to have it', async () => {
    const server = await startServer();
    closing.push(() => server.close());
    await expect(open(device(), server.socket)).rejects.toThrow('There is no classroom under this address');
    await expect(open(device(), 'ws://127.0.0.1:9/sync', undefined, { patience: 100 })).rejects.toThrow('does not answer');
  });
});
