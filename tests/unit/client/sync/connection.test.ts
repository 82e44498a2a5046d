import { afterEach, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { type Connection, type ConnectOptions, connect } from '#client/sync/connection.ts';
import { serverOf } from '#client/sync/server.ts';
import { unconfirmedOf } from '#client/sync/unconfirmed.ts';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { viewIdOf } from '#model/document/viewId.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { furnished } from '../../../support/furnished.ts';
import { heldStorage } from '../../../support/server/heldStorage.ts';
import { startServer, type TestServer } from '../../../support/server/startServer.ts';

const ROOM = 'B234567890123456789012';
const socketHere = WebSocket as unknown as NonNullable<ConnectOptions['WebSocket']>;
const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});
async function start(options: Parameters<typeof startServer>[0] = {}): Promise<TestServer> {
  const server = await startServer(options);
  closing.push(() => server.close());
  return server;
}
function join(server: string | null, doc: Y.Doc, id = ROOM, waitingBefore = 0): Connection {
  const connection = connect(id, doc, { server, WebSocket: socketHere, waitingBefore });
  closing.push(() => connection.close());
  return connection;
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 6_000, interval: 3 });
const pause = (ms = 60) => new Promise((resolve) => setTimeout(resolve, ms));
const saved = { server: 'saved', waiting: 0, trouble: null };

describe('a connection', () => {
  it('brings two people together and says saved when the server has it', async () => {
    const server = await start();
    const one = createDocument(furnished());
    const other = openDocument(new Y.Doc());
    const first = join(server.socket, one.doc);
    expect(first.state().server).toBe('offline');
    await soon(() => expect(first.state()).toEqual(saved));
    const second = join(server.socket, other.doc);
    await soon(() => expect(other.read()).toEqual(one.read()));
    other.commands.movePiece('a1', 's1', { x: 321, y: 1 });
    expect(second.state()).toEqual({ server: 'saving', waiting: 1, trouble: null });
    await soon(() => expect(second.state()).toEqual(saved));
    await soon(() => expect(one.read()).toEqual(other.read()));
    expect(first.state()).toEqual(saved);
  });

  it('never says saved while the commit is out', async () => {
    const storage = heldStorage();
    const server = await start({ storage });
    const document = createDocument(furnished());
    const connection = join(server.socket, document.doc);
    await soon(() => expect(connection.state()).toEqual(saved));
    storage.mode = 'hold';
    document.commands.movePiece('a1', 's1', { x: 1, y: 1 });
    document.commands.movePiece('a1', 's1', { x: 2, y: 1 });
    await pause();
    expect(connection.state()).toEqual({ server: 'saving', waiting: 2, trouble: null });
    await storage.release();
    await soon(() => expect(connection.state()).toEqual(saved));
  });

  it('counts what waits while the server is away, and sends it when it is back', async () => {
    const storage = memoryStorage();
    const first = await start({ storage });
    const document = createDocument(furnished());
    const connection = join(first.socket, document.doc);
    await soon(() => expect(connection.state()).toEqual(saved));
    await first.close();
    await soon(() => expect(connection.state().server).toBe('offline'));
    for (let x = 0; x < 3; x++) document.commands.movePiece('a1', 's1', { x, y: 9 });
    expect(connection.state()).toMatchObject({ server: 'offline', waiting: 3 });
    await start({ storage, port: first.port });
    await soon(() => expect(connection.state()).toEqual(saved));
    const fresh = openDocument(new Y.Doc());
    join(first.socket, fresh.doc);
    await soon(() => expect(fresh.read()).toEqual(document.read()));
  });

  it('says in words that the server could not save, keeps the change and sends it again', async () => {
    const storage = heldStorage();
    const server = await start({ storage });
    const document = createDocument(furnished());
    const connection = join(server.socket, document.doc);
    await soon(() => expect(connection.state()).toEqual(saved));
    storage.mode = 'refuse';
    document.commands.movePiece('a1', 's1', { x: 77, y: 1 });
    await soon(() => expect(connection.state()).toMatchObject({ waiting: 1, trouble: expect.stringContaining('could not save') }));
    expect(connection.state().server).not.toBe('saved');
    expect(server.said[0]).toContain('SQLITE_FULL');
    storage.mode = 'through';
    await soon(() => expect(connection.state()).toEqual(saved));
  });

  it('lets look with the address for looking, and says that changes are not sent', async () => {
    const server = await start();
    const one = createDocument(furnished());
    const first = join(server.socket, one.doc);
    await soon(() => expect(first.state()).toEqual(saved));
    const other = openDocument(new Y.Doc());
    const looking = join(server.socket, other.doc, viewIdOf(ROOM));
    await soon(() => expect(other.read()).toEqual(one.read()));
    expect(looking.state().server).toBe('saved');
    other.commands.movePiece('a1', 's1', { x: 5, y: 5 });
    await soon(() =>
      expect(looking.state()).toMatchObject({ server: 'refused', waiting: 1, trouble: expect.stringContaining('lets you look') }),
    );
    await pause();
    expect(one.read().arrangements[0]?.pieces[0]?.x).toBe(900);
  });

  it('is refused, in words and for good, where the address is none', async () => {
    const server = await start();
    const connection = join(server.socket, new Y.Doc(), 'short');
    await soon(() => expect(connection.state()).toMatchObject({ server: 'refused', trouble: expect.stringContaining('no classroom') }));
  });

  it('shows who is here, and that they left', async () => {
    const server = await start();
    const one = join(server.socket, new Y.Doc());
    const other = join(server.socket, new Y.Doc());
    one.awareness.setLocalState({ name: 'Ida' });
    await soon(() => expect([...other.awareness.getStates().values()]).toContainEqual({ name: 'Ida' }));
    one.close();
    await soon(() => expect([...other.awareness.getStates().values()]).not.toContainEqual({ name: 'Ida' }));
  });

  it('remembers over a reload how much the server has not confirmed', async () => {
    const kept = new Map<string, string>();
    const storage = {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
      removeItem: (key: string) => kept.delete(key),
    };
    const unconfirmed = unconfirmedOf(ROOM, storage as unknown as Storage);
    unconfirmed.note(4);
    expect(unconfirmedOf(ROOM, storage as unknown as Storage).read()).toBe(4);
    const document = createDocument(furnished());
    const away = join('ws://127.0.0.1:9/sync', document.doc, ROOM, unconfirmed.read());
    expect(away.state()).toMatchObject({ server: 'offline', waiting: 4 });
    const server = await start();
    const back = join(server.socket, document.doc, ROOM, 4);
    await soon(() => expect(back.state()).toEqual(saved));
    unconfirmed.note(0);
    expect(kept.size).toBe(0);
  });

  it('is alone where the page came from no server', () => {
    expect(join(null, new Y.Doc()).state().server).toBe('alone');
    expect(serverOf({ protocol: 'file:', host: '' })).toBeNull();
    expect(serverOf({ protocol: 'https:', host: 'room.example' })).toBe('wss://room.example/sync');
    expect(serverOf({ protocol: 'http:', host: '10.0.0.7:8787' })).toBe('ws://10.0.0.7:8787/sync');
  });
});
