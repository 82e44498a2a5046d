import { afterEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { viewIdOf } from '#model/document/viewId.ts';
import { messages, roles } from '#model/document/wire.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { furnished } from '../../../support/furnished.ts';
import { heldStorage } from '../../../support/server/heldStorage.ts';
import { type RawPeer, rawPeer, updatesOf } from '../../../support/server/rawPeer.ts';
import { startServer, type TestServer } from '../../../support/server/startServer.ts';

const ROOM = 'A234567890123456789012';
let server: TestServer | null = null;
const peers: RawPeer[] = [];
afterEach(async () => {
  for (const peer of peers.splice(0)) peer.socket.terminate();
  await server?.close();
  server = null;
});
async function start(options: Parameters<typeof startServer>[0] = {}): Promise<TestServer> {
  server = await startServer(options);
  return server;
}
async function come(to: TestServer, id = ROOM): Promise<RawPeer> {
  const peer = await rawPeer(`${to.socket}/${id}`);
  peers.push(peer);
  return peer;
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 3_000, interval: 3 });
const pause = (ms = 40) => new Promise((resolve) => setTimeout(resolve, ms));
const nameIn = (updates: readonly Uint8Array[]): unknown => {
  const doc = new Y.Doc();
  for (const update of updates) Y.applyUpdate(doc, update);
  return doc.getMap('classroom').get('name');
};

describe('a room', () => {
  it('tells a page what it may do, asks what it lacks, and gives it what is there', async () => {
    const to = await start();
    const one = await come(to);
    await soon(() =>
      expect(one.heard.map(({ type, kind }) => [type, kind])).toEqual([
        [messages.role, null],
        [messages.sync, 0],
      ]),
    );
    expect(one.heard[0]?.number).toBe(roles.change);
    one.update(Y.encodeStateAsUpdate(createDocument(furnished()).doc));
    one.mark(7);
    await soon(() => expect(one.marks()).toEqual([7]));
    const two = await come(to);
    two.ask(new Y.Doc());
    await soon(() => expect(nameIn(two.updates())).toBe('Plain room'));
  });

  it('shows an update to the others and echoes the mark only once it is committed', async () => {
    const storage = heldStorage();
    const to = await start({ storage });
    const [one, two] = [await come(to), await come(to)];
    storage.mode = 'hold';
    one.update(Y.encodeStateAsUpdate(createDocument(furnished()).doc));
    one.mark(1);
    await soon(() => expect(storage.waiting()).toBe(1));
    const late = await come(to);
    late.ask(new Y.Doc());
    await pause();
    expect([one.marks(), two.updates(), late.updates()]).toEqual([[], [], []]);
    await storage.release();
    await soon(() => expect(one.marks()).toEqual([1]));
    await soon(() => expect(nameIn(two.updates())).toBe('Plain room'));
    await soon(() => expect(nameIn(late.updates())).toBe('Plain room'));
    expect(one.updates()).toEqual([]);
  });

  it('commits what comes in one turn as one group', async () => {
    const storage = heldStorage();
    const to = await start({ storage });
    const one = await come(to);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(0);
    await soon(() => expect(one.marks()).toEqual([0]));
    storage.mode = 'hold';
    const moves = updatesOf(document.doc, () => {
      for (let x = 0; x < 50; x++) document.commands.movePiece('a1', 's1', { x, y: 1 });
    });
    for (const move of moves) one.update(move);
    one.mark(1);
    await soon(() => expect(storage.waiting()).toBe(1));
    await pause();
    await storage.release();
    await soon(() => expect(one.marks()).toEqual([0, 1]));
    expect(storage.groups.reduce((sum, count) => sum + count, 0)).toBe(51);
    expect(storage.groups.length).toBeLessThanOrEqual(4);
  });

  it('holds the mark back while an update waits for a missing one, and for nobody else', async () => {
    const to = await start();
    const [one, two] = [await come(to), await come(to)];
    const document = createDocument(furnished());
    const [first, second] = [
      Y.encodeStateAsUpdate(document.doc),
      ...updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 5, y: 5 })),
    ];
    if (!first || !second) throw new Error('two updates');
    one.update(second);
    one.mark(1);
    two.update(Y.encodeStateAsUpdate(createDocument(furnished()).doc));
    two.mark(2);
    await soon(() => expect(two.marks()).toEqual([2]));
    await pause();
    expect(one.marks()).toEqual([]);
    two.update(first);
    await soon(() => expect(one.marks()).toEqual([1]));
  });

  it('holds the mark back for a deletion of something that has not come', async () => {
    const to = await start();
    const [one, two] = [await come(to), await come(to)];
    const document = createDocument(furnished());
    const all = Y.encodeStateAsUpdate(document.doc);
    const [gone] = updatesOf(document.doc, () => document.commands.putAway('a1', 'm1'));
    if (!gone) throw new Error('a deletion');
    one.update(gone);
    one.mark(1);
    await pause();
    expect(one.marks()).toEqual([]);
    two.update(all);
    await soon(() => expect(one.marks()).toEqual([1]));
  });

  it('writes nothing for what it has already', async () => {
    const storage = heldStorage();
    const to = await start({ storage });
    const one = await come(to);
    const all = Y.encodeStateAsUpdate(createDocument(furnished()).doc);
    for (let again = 0; again < 3; again++) one.update(all);
    one.mark(3);
    await soon(() => expect(one.marks()).toEqual([3]));
    expect(storage.groups).toEqual([1]);
  });

  it('lets who has the address for looking look, and takes nothing from them', async () => {
    const storage = heldStorage();
    const to = await start({ storage });
    const one = await come(to);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    const looking = await come(to, viewIdOf(ROOM));
    looking.ask(new Y.Doc());
    await soon(() => expect(nameIn(looking.updates())).toBe('Plain room'));
    expect(looking.heard[0]).toMatchObject({ type: messages.role, number: roles.look });
    for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 9, y: 9 }))) looking.update(move);
    looking.mark(2);
    await pause();
    expect(looking.marks()).toEqual([]);
    expect(storage.groups).toEqual([1]);
    expect(one.updates()).toEqual([]);
  });

  it('takes remarks from who may only look, and nothing else: each once, whatever else it says', async () => {
    const to = await start();
    const one = await come(to);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    const looking = await come(to, viewIdOf(ROOM));
    const wish = { id: 'n-fromalooker', on: 's1', x: 5, y: 6, text: 'The lowest board is free', by: 'LS' };
    looking.remark(JSON.stringify({ ...wish, name: 'another class', done: true }));
    looking.remark(JSON.stringify({ ...wish, text: 'sent again, or another under the same id' }));
    // One that is there keeps its words: the id is taken.
    looking.remark(JSON.stringify({ ...wish, id: 'n-fromalooker', text: 'overwritten' }));
    await soon(() => expect(one.updates().length).toBeGreaterThan(0));
    await pause();
    const seen = openDocument(new Y.Doc());
    one.ask(new Y.Doc());
    await soon(() => expect(one.updates().length).toBeGreaterThan(1));
    for (const update of one.updates()) Y.applyUpdate(seen.doc, update);
    const before = document.read();
    // The name is the visitor's own word, and says so.
    expect(seen.read()).toEqual({ ...before, notes: [...before.notes, { ...wish, by: 'LS (visitor)', done: false }] });
    expect(looking.updates().length).toBeGreaterThan(0);
    // Kept like any change.
    await server?.close();
    server = null;
  });

  it('lets go of who sends as a remark what is none', async () => {
    const to = await start();
    const one = await come(to);
    one.update(Y.encodeStateAsUpdate(createDocument(furnished()).doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    for (const json of ['{}', 'x', JSON.stringify({ id: 'n-12345678', on: null, x: 0, y: 0, by: '', text: 'x'.repeat(9_000) })]) {
      const looking = await come(to, viewIdOf(ROOM));
      looking.remark(json);
      expect(await looking.closed).toBe(4400);
    }
  });

  it('lets nobody in whose address is no address', async () => {
    const to = await start();
    for (const id of ['short', `${ROOM}!`, 'x'.repeat(65)]) expect(await (await come(to, encodeURIComponent(id))).closed).toBe(4404);
    await expect(rawPeer(`${to.socket}/${ROOM}/more`)).rejects.toThrow('404');
    await expect(rawPeer(`${to.socket.replace('/sync', '/other')}/${ROOM}`)).rejects.toThrow('404');
    await expect(rawPeer(`${to.socket}/${ROOM}`, { origin: 'https://elsewhere.example' })).rejects.toThrow('403');
    const own = await rawPeer(`${to.socket}/${ROOM}`, { origin: to.http });
    peers.push(own);
    await soon(() => expect(own.heard.length).toBeGreaterThan(0));
  });

  it('forgets overwritten values when it tidies the log, and gives the same classroom after', async () => {
    const storage = memoryStorage();
    const to = await start({ storage, rooms: { compactAfter: 10 } });
    const one = await come(to);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    for (const move of updatesOf(document.doc, () => {
      for (let n = 0; n < 40; n++) document.commands.changeMaterial('m1', { control: `overwritten ${n} `.repeat(20) });
    })) {
      one.update(move);
    }
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    const before = await storage.load(ROOM);
    one.socket.close();
    await vi.waitFor(async () => expect((await storage.load(ROOM)).updates).toEqual([]), { timeout: 3000 });
    const after = await storage.load(ROOM);
    const merged = Y.mergeUpdates([...before.updates]);
    expect(Buffer.from(merged).toString()).toContain('overwritten 5 ');
    expect(Buffer.from(after.snapshot ?? []).toString()).not.toContain('overwritten 5 ');
    expect(Buffer.from(after.snapshot ?? []).toString()).toContain('overwritten 39 ');
    expect(after.snapshot?.length).toBeLessThan(merged.length * 0.5);
    const two = await come(to);
    two.ask(new Y.Doc());
    await soon(() => expect(nameIn(two.updates())).toBe('Plain room'));
    const doc = new Y.Doc();
    for (const update of two.updates()) Y.applyUpdate(doc, update);
    expect(Y.encodeStateVector(doc)).toEqual(Y.encodeStateVector(document.doc));
  });

  it('tidies the log while people are there, with nothing lost', async () => {
    const storage = memoryStorage();
    const to = await start({ storage, rooms: { compactOpenAfter: 20 } });
    const one = await come(to);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    for (let x = 0; x < 90; x++) {
      for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x, y: x }))) one.update(move);
      if (x % 10 === 0) await pause(2);
    }
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    await vi.waitFor(async () => expect((await storage.load(ROOM)).updates.length).toBeLessThan(20));
    const { snapshot, updates } = await storage.load(ROOM);
    const doc = new Y.Doc();
    for (const update of [snapshot ?? new Uint8Array([0, 0]), ...updates]) Y.applyUpdate(doc, update);
    expect(Y.encodeStateVector(doc)).toEqual(Y.encodeStateVector(document.doc));
    expect(openDocument(doc).read()).toEqual(document.read());
  });
});
