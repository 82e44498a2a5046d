import fc from 'fast-check';
import * as encoding from 'lib0/encoding';
import { afterEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { LARGEST_MESSAGE, messages } from '#model/document/wire.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { createCommitter } from '#server/sync/committer.ts';
import type { Peer } from '#server/sync/peer.ts';
import { openRoom } from '#server/sync/room.ts';
import { furnished } from '../support/furnished.ts';
import { heldStorage } from '../support/server/heldStorage.ts';
import { message, type RawPeer, rawPeer, syncMessage, updatesOf } from '../support/server/rawPeer.ts';
import { startServer, type TestServer } from '../support/server/startServer.ts';

const ROOM = 'D234567890123456789012';
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
async function come(to: TestServer): Promise<RawPeer> {
  const peer = await rawPeer(`${to.socket}/${ROOM}`);
  peers.push(peer);
  return peer;
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 8_000, interval: 3 });
const varuints = (...numbers: number[]) =>
  message((encoder) => {
    for (const number of numbers) encoding.writeVarUint(encoder, number);
  });

/** The room still works for somebody who behaves. */
async function stillWorks(to: TestServer, number: number): Promise<void> {
  const good = await come(to);
  good.update(Y.encodeStateAsUpdate(createDocument(furnished()).doc));
  good.mark(number);
  await soon(() => expect(good.marks()).toEqual([number]));
}

describe('garbage', () => {
  it('closes the connection that sent it, and nothing else', async () => {
    const to = await start();
    const witness = await come(to);
    const whole = syncMessage(2, Y.encodeStateAsUpdate(createDocument(furnished()).doc));
    const cases: Record<string, Uint8Array> = {
      'an empty message': new Uint8Array(),
      'a kind that there is not': varuints(77, 1, 2),
      'a part of sync that there is not': varuints(messages.sync, 9, 0),
      'an update that breaks off': whole.slice(0, whole.length / 2),
      'an update of noise': syncMessage(
        2,
        new Uint8Array(200).map((_, index) => (index * 37) % 256),
      ),
      'a state vector of noise': syncMessage(0, new Uint8Array([255, 255, 255, 1])),
      'a length beyond the end': varuints(messages.sync, 2, 4_000_000_000),
      'a mark without a number': varuints(messages.mark),
      'presence of noise': message((encoder) => {
        encoding.writeVarUint(encoder, messages.awareness);
        encoding.writeVarUint8Array(encoder, new Uint8Array([1, 5, 1, 3, 123, 34, 0]));
      }),
      'presence too large': message((encoder) => {
        encoding.writeVarUint(encoder, messages.awareness);
        encoding.writeVarUint8Array(encoder, new Uint8Array(70_000));
      }),
    };
    for (const [name, bytes] of Object.entries(cases)) {
      const bad = await come(to);
      bad.send(bytes);
      expect([name, await bad.closed]).toEqual([name, 4400]);
    }
    const text = await come(to);
    text.socket.send('hello');
    expect(await text.closed).toBe(4400);
    expect(witness.socket.readyState).toBe(witness.socket.OPEN);
    expect(to.said).toEqual([]);
    await stillWorks(to, 5);
  });

  it('of any kind leaves a room as it was', async () => {
    const storage = memoryStorage();
    const closed: number[] = [];
    const room = await openRoom(
      ROOM,
      storage,
      createCommitter(storage, () => undefined),
    );
    const peer: Peer = {
      mayChange: true,
      needs: new Map(),
      clients: new Set(),
      marks: [],
      send: () => undefined,
      close: (code) => closed.push(code),
    };
    room.join(peer);
    const good = Y.encodeStateAsUpdate(createDocument(furnished()).doc);
    room.take(peer, good);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 120 }), fc.nat(good.length - 1), fc.nat(255), (noise, at, value) => {
        const spoiled = good.slice();
        spoiled[at] = value;
        for (const bytes of [noise, spoiled])
          try {
            room.take(peer, bytes);
          } catch (error) {
            expect(error).toBeInstanceOf(Error);
          }
        expect(room.isSound()).toBe(true);
      }),
      { numRuns: 80 },
    );
    await new Promise((resolve) => setTimeout(resolve, 20));
    const { updates } = await storage.load(ROOM);
    const doc = new Y.Doc();
    for (const update of updates) Y.applyUpdate(doc, update);
    expect(openDocument(doc).read().arrangements.length).toBeGreaterThan(0);
    room.destroy();
  });

  it('that is well formed is kept, and set aside by who reads it', async () => {
    const to = await start();
    const document = createDocument(furnished());
    const one = await come(to);
    one.update(Y.encodeStateAsUpdate(document.doc));
    for (const bad of updatesOf(document.doc, () => {
      document.doc.getMap('materials').set('m1', 'no material');
      document.doc.getMap('arrangements').set('__proto__', new Y.Map([['name', 'x']]));
    }))
      one.update(bad);
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    const two = await come(to);
    two.ask(new Y.Doc());
    await soon(() => expect(two.updates().length).toBeGreaterThan(0));
    const doc = new Y.Doc();
    for (const update of two.updates()) Y.applyUpdate(doc, update);
    const reader = openDocument(doc);
    expect(reader.read().materials.map(({ id }) => id)).toEqual(['m2']);
    expect(reader.needsRepair()).toHaveLength(2);
  });
});

describe('too much', () => {
  it('in one message closes with 1009', async () => {
    const to = await start();
    const bad = await come(to);
    bad.send(new Uint8Array(LARGEST_MESSAGE + 1));
    expect(await bad.closed).toBe(1009);
    await stillWorks(to, 1);
  });

  it('in a second is slowed down, not lost', async () => {
    const to = await start();
    const one = await come(to);
    const begun = Date.now();
    for (let number = 1; number <= 1_200; number++) one.mark(number);
    await soon(() => expect(one.marks()).toHaveLength(1_200));
    one.mark(1_201);
    await soon(() => expect(one.marks()).toHaveLength(1_201));
    // 1,000 at once and 200 a second after that: the last one is read after most of a second.
    expect(Date.now() - begun).toBeGreaterThan(700);
    expect(one.marks()).toEqual(Array.from({ length: 1_201 }, (_, index) => index + 1));
  });

  it('of one person is refused, so that the list of people cannot grow without end', async () => {
    const to = await start();
    const bad = await come(to);
    for (let client = 1; client <= 40; client++)
      bad.send(
        message((encoder) => {
          encoding.writeVarUint(encoder, messages.awareness);
          const inner = message((state) => {
            for (const number of [1, client, 1]) encoding.writeVarUint(state, number);
            encoding.writeVarString(state, '{"name":"x"}');
          });
          encoding.writeVarUint8Array(encoder, inner);
        }),
      );
    expect(await bad.closed).toBe(4400);
  });

  it('of connections is sent away for later', async () => {
    const to = await start({ mostConnections: 2 });
    await come(to);
    await come(to);
    expect(await (await come(to)).closed).toBe(1013);
  });
});

describe('a slow reader', () => {
  it('is let go instead of filling the server, and the others go on', async () => {
    const to = await start();
    const [writer, slow] = [await come(to), await come(to)];
    slow.socket.pause();
    const gone = new Promise((resolve) => slow.socket.once('close', resolve));
    const document = createDocument(furnished());
    writer.update(Y.encodeStateAsUpdate(document.doc));
    let number = 0;
    const before = process.memoryUsage().arrayBuffers;
    for (let round = 0; round < 26; round++) {
      const control = `${round}`.padEnd(1_000, 'x');
      const words = Array.from({ length: 1_000 }, () => control);
      for (const update of updatesOf(document.doc, () => document.doc.getMap('notes').set('large', words))) writer.update(update);
      writer.mark(++number);
      await soon(() => expect(writer.marks()).toHaveLength(number));
    }
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(160 * 1024 * 1024);
    slow.socket.resume();
    await gone;
    await stillWorks(to, 1);
  });

  it('that answers no more is found out and let go', async () => {
    const to = await start({ heartbeat: 40 });
    const dead = await come(to);
    const alive = await come(to);
    dead.socket.pong = () => undefined;
    dead.socket.removeAllListeners('ping');
    dead.socket.pause();
    await new Promise((resolve) => setTimeout(resolve, 250));
    dead.socket.resume();
    expect(await dead.closed).toBe(1006);
    expect(alive.socket.readyState).toBe(alive.socket.OPEN);
  });
});

describe('a disk that fails', () => {
  it('acknowledges nothing, closes, and goes on once it works again', async () => {
    const storage = heldStorage();
    // Long enough that the next one comes while the room rests, on a busy machine too.
    const to = await start({ storage, rooms: { rest: 1500 } });
    const [one, two] = [await come(to), await come(to)];
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    await soon(() => expect(two.updates()).toHaveLength(1));
    storage.mode = 'refuse';
    for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 1, y: 1 }))) one.update(move);
    one.mark(2);
    expect([await one.closed, await two.closed]).toEqual([1011, 1011]);
    expect([one.marks(), two.updates().length]).toEqual([[1], 1]);
    expect(to.said).toEqual([expect.stringContaining('database or disk is full')]);
    expect(to.said.join()).not.toContain(ROOM);
    expect(await (await come(to)).closed).toBe(1011);
    storage.mode = 'through';
    await new Promise((resolve) => setTimeout(resolve, 1600));
    const back = await come(to);
    back.update(Y.encodeStateAsUpdate(document.doc));
    back.mark(3);
    await soon(() => expect(back.marks()).toEqual([3]));
    const doc = new Y.Doc();
    for (const update of (await storage.load(ROOM)).updates) Y.applyUpdate(doc, update);
    expect(openDocument(doc).read()).toEqual(document.read());
  });
});
