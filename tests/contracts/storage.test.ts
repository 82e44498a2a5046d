import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { viewIdOf } from '#model/document/viewId.ts';
import { memoryStorage } from '#server/storage/memoryStorage.ts';
import { CannotOpen, sqliteStorage } from '#server/storage/sqliteStorage.ts';
import type { Storage } from '#server/storage/storage.ts';

const folder = mkdtempSync(join(tmpdir(), 'lowshelf-storage-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const bytes = (...values: number[]) => new Uint8Array(values);
const plain = (list: readonly Uint8Array[]) => list.map((update) => [...update]);
let files = 0;

/** How to open an adapter; `again` opens what it holds anew, where it outlives being closed. */
const adapters: { name: string; open: () => { storage: Storage; again: ((from: Storage) => Promise<Storage>) | null } }[] = [
  { name: 'memory', open: () => ({ storage: memoryStorage(), again: null }) },
  {
    name: 'SQLite',
    open: () => {
      const file = join(folder, `${++files}`, 'a.sqlite');
      return {
        storage: sqliteStorage(file),
        again: async (from) => {
          await from.close();
          return sqliteStorage(file);
        },
      };
    },
  },
];

for (const { name, open } of adapters)
  describe(`${name} storage`, () => {
    it('knows nothing of a classroom that nobody wrote', async () => {
      const { storage } = open();
      expect(await storage.load('room')).toEqual({ snapshot: null, updates: [], last: 0 });
      expect(await storage.ofView(viewIdOf('room'))).toBeNull();
      await storage.close();
    });

    it('gives back updates in the order they were committed, each classroom its own', async () => {
      const { storage } = open();
      await storage.commit([
        { classroom: 'one', update: bytes(1) },
        { classroom: 'two', update: bytes(9) },
        { classroom: 'one', update: bytes(2, 0, 255) },
      ]);
      await storage.commit([{ classroom: 'one', update: bytes() }]);
      const one = await storage.load('one');
      expect(plain(one.updates)).toEqual([[1], [2, 0, 255], []]);
      expect(plain((await storage.load('two')).updates)).toEqual([[9]]);
      expect(one.last).toBeGreaterThan(0);
      await storage.close();
    });

    it('keeps a copy: the caller may use its buffer again', async () => {
      const { storage } = open();
      const buffer = bytes(1, 2, 3);
      await storage.commit([{ classroom: 'one', update: buffer.subarray(1) }]);
      buffer.fill(7);
      expect(plain((await storage.load('one')).updates)).toEqual([[2, 3]]);
      await storage.close();
    });

    it('takes the log into a state up to a number and leaves what came later', async () => {
      const { storage } = open();
      await storage.commit([
        { classroom: 'one', update: bytes(1) },
        { classroom: 'two', update: bytes(5) },
      ]);
      const { last } = await storage.load('one');
      await storage.commit([{ classroom: 'one', update: bytes(2) }]);
      await storage.replace('one', bytes(100), last);
      const now = await storage.load('one');
      expect([...(now.snapshot ?? [])]).toEqual([100]);
      expect(plain(now.updates)).toEqual([[2]]);
      expect(plain((await storage.load('two')).updates)).toEqual([[5]]);
      await storage.replace('one', bytes(101), now.last);
      expect(await storage.load('one')).toMatchObject({ updates: [] });
      await storage.close();
    });

    it('numbers never start again, so that an old compaction cannot take new updates away', async () => {
      const { storage } = open();
      await storage.commit([{ classroom: 'one', update: bytes(1) }]);
      const { last } = await storage.load('one');
      await storage.replace('one', bytes(100), last);
      await storage.commit([{ classroom: 'one', update: bytes(2) }]);
      await storage.replace('one', bytes(100), last);
      expect(plain((await storage.load('one')).updates)).toEqual([[2]]);
      await storage.close();
    });

    it('finds a classroom by its address for looking', async () => {
      const { storage } = open();
      await storage.commit([{ classroom: 'one', update: bytes(1) }]);
      expect(await storage.ofView(viewIdOf('one'))).toBe('one');
      expect(await storage.ofView('one')).toBeNull();
      await storage.close();
    });

    it('takes a large update whole', async () => {
      const { storage } = open();
      const large = new Uint8Array(6_000_000).map((_, index) => index % 251);
      await storage.commit([{ classroom: 'one', update: large }]);
      const [back] = (await storage.load('one')).updates;
      expect(Buffer.compare(Buffer.from(back ?? []), Buffer.from(large))).toBe(0);
      await storage.close();
    });

    it('has everything after it was closed and opened again, where it outlives that', async () => {
      const { storage, again } = open();
      await storage.commit([{ classroom: 'one', update: bytes(1) }]);
      await storage.replace('one', bytes(50), (await storage.load('one')).last);
      await storage.commit([{ classroom: 'one', update: bytes(2) }]);
      const before = await storage.load('one');
      if (!again) return;
      const opened = await again(storage);
      const after = await opened.load('one');
      expect([...(after.snapshot ?? [])]).toEqual([50]);
      expect(plain(after.updates)).toEqual([[2]]);
      expect(after.last).toBe(before.last);
      expect(await opened.ofView(viewIdOf('one'))).toBe('one');
      await opened.close();
    });
  });

describe('the SQLite file', () => {
  const file = () => join(folder, `${++files}`, 'a.sqlite');

  it('keeps nothing of a batch that the disk refuses', async () => {
    const path = file();
    const storage = sqliteStorage(path);
    await storage.commit([{ classroom: 'one', update: bytes(1) }]);
    const entries = [
      { classroom: 'one', update: bytes(2) },
      { classroom: 'new', update: 'no bytes' as unknown as Uint8Array },
      { classroom: 'one', update: null as unknown as Uint8Array },
    ];
    await expect(storage.commit(entries)).rejects.toThrow();
    expect(plain((await storage.load('one')).updates)).toEqual([[1]]);
    await storage.commit([{ classroom: 'new', update: bytes(3) }]);
    expect(await storage.ofView(viewIdOf('new'))).toBe('new');
    await storage.close();
  });

  it('has a write-ahead log', async () => {
    const path = file();
    const storage = sqliteStorage(path);
    await storage.close();
    const database = new Database(path);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    database.close();
  });

  it('is for one server at a time, and says so', async () => {
    const path = file();
    const storage = sqliteStorage(path);
    await storage.commit([{ classroom: 'one', update: bytes(1) }]);
    expect(() => sqliteStorage(path)).toThrow(CannotOpen);
    expect(() => sqliteStorage(path)).toThrow('Another Lowshelf server already uses');
    await storage.close();
    await sqliteStorage(path).close();
  });

  it('of a newer server is not touched', async () => {
    const path = file();
    await sqliteStorage(path).close();
    const database = new Database(path);
    database.pragma('user_version = 99');
    database.close();
    expect(() => sqliteStorage(path)).toThrow('newer Lowshelf');
  });
});
