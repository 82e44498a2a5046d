import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { createDocument, openDocument } from '#model/document/openDocument.ts';
import { sqliteStorage } from '#server/storage/sqliteStorage.ts';
import { furnished } from '../support/furnished.ts';
import { type RawPeer, rawPeer, updatesOf } from '../support/server/rawPeer.ts';
import { type SpawnedServer, spawnServer } from '../support/server/spawnServer.ts';
import { freshFolder } from '../support/server/startServer.ts';

const ROOM = 'C234567890123456789012';
const folders: string[] = [];
const running: SpawnedServer[] = [];
const peers: RawPeer[] = [];
afterEach(async () => {
  for (const peer of peers.splice(0)) peer.socket.terminate();
  for (const server of running.splice(0)) {
    server.process.kill('SIGKILL');
    await server.ended;
  }
});
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const folderOf = (): string => {
  const folder = freshFolder();
  folders.push(folder);
  return folder;
};
async function run(folder: string, when: 'before' | 'after' | 'never', nth = 1): Promise<SpawnedServer> {
  const server = await spawnServer('tests/support/server/dyingServer.ts', [folder, when, String(nth)]);
  running.push(server);
  return server;
}
async function come(server: SpawnedServer): Promise<RawPeer> {
  const peer = await rawPeer(`${server.socket}/${ROOM}`);
  peers.push(peer);
  return peer;
}
/** What lies on the disk, read without any server. */
async function onDisk(folder: string) {
  const storage = sqliteStorage(join(folder, 'lowshelf.sqlite'));
  const { snapshot, updates } = await storage.load(ROOM);
  await storage.close();
  const doc = new Y.Doc();
  for (const update of snapshot ? [snapshot, ...updates] : updates) Y.applyUpdate(doc, update);
  return openDocument(doc).read();
}
const soon = async (look: () => void): Promise<void> => vi.waitFor(look, { timeout: 10_000, interval: 2 });

describe('a server that is killed', () => {
  it('between commit and broadcast has told nobody, and what was committed is there at the next start', async () => {
    const folder = folderOf();
    const server = await run(folder, 'after', 2);
    const [one, two] = [await come(server), await come(server)];
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    await soon(() => expect(two.updates()).toHaveLength(1));
    for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 1111, y: 1 }))) one.update(move);
    one.mark(2);
    expect(await server.ended).toBe('SIGKILL');
    expect([one.marks(), two.updates().length]).toEqual([[1], 1]);
    expect(await onDisk(folder)).toEqual(document.read());

    const again = await run(folder, 'never');
    const three = await come(again);
    three.ask(new Y.Doc());
    await soon(() => expect(three.updates()).toHaveLength(1));
    const doc = new Y.Doc();
    for (const update of three.updates()) Y.applyUpdate(doc, update);
    expect(openDocument(doc).read()).toEqual(document.read());
  });

  it('before the commit has not said saved, and is whole at the next start', async () => {
    const folder = folderOf();
    const server = await run(folder, 'before', 2);
    const one = await come(server);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    const before = document.read();
    for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 1111, y: 1 }))) one.update(move);
    one.mark(2);
    expect(await server.ended).toBe('SIGKILL');
    expect(one.marks()).toEqual([1]);
    expect(await onDisk(folder)).toEqual(before);
  });

  it('at any moment has all that it said was saved', async () => {
    const folder = folderOf();
    for (const moment of [35, 120]) {
      const server = await run(folder, 'never');
      const one = await come(server);
      const document = createDocument(furnished());
      one.update(Y.encodeStateAsUpdate(document.doc));
      let made = 0;
      const writing = setInterval(() => {
        made++;
        for (const move of updatesOf(document.doc, () => document.commands.addMaterial({ id: `made-${moment}-${made}`, name: `${made}` })))
          one.update(move);
        one.mark(made);
      }, 2);
      await soon(() => expect(one.marks().length).toBeGreaterThan(3));
      await new Promise((resolve) => setTimeout(resolve, moment));
      server.process.kill('SIGKILL');
      expect(await server.ended).toBe('SIGKILL');
      clearInterval(writing);
      const said = Math.max(...one.marks());
      const ids = new Set((await onDisk(folder)).materials.map(({ id }) => id));
      const missing = Array.from({ length: said }, (_, index) => `made-${moment}-${index + 1}`).filter((id) => !ids.has(id));
      expect({ said: said > 3, missing }).toEqual({ said: true, missing: [] });
    }
  });
});

describe('the server as it is started', () => {
  it('stops at SIGTERM with everything committed, and a second one on the same data says so', async () => {
    const folder = folderOf();
    const env = { PORT: '0', DATA: folder, HOST: '127.0.0.1' };
    const server = await spawnServer('server/main.ts', [], env);
    running.push(server);
    await expect(spawnServer('server/main.ts', [], env)).rejects.toThrow('Another Lowshelf server already uses');
    const one = await come(server);
    const document = createDocument(furnished());
    one.update(Y.encodeStateAsUpdate(document.doc));
    one.mark(1);
    await soon(() => expect(one.marks()).toEqual([1]));
    for (const move of updatesOf(document.doc, () => document.commands.movePiece('a1', 's1', { x: 7, y: 7 }))) one.update(move);
    one.mark(2);
    await soon(() => expect(one.marks()).toEqual([1, 2]));
    server.process.kill('SIGTERM');
    expect(await one.closed).toBe(1001);
    expect(await server.ended).toBe(0);
    expect(await onDisk(folder)).toEqual(document.read());
    expect(server.output()).not.toContain(ROOM);
  });
});
