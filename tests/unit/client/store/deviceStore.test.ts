import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { compact } from '#client/store/compact.ts';
import { openDatabase } from '#client/store/database.ts';
import { type DeviceStore, type DeviceStoreOptions, openDeviceStore } from '#client/store/deviceStore.ts';
import { exportClassroom } from '#model/document/exportClassroom.ts';
import { type createDocument, openDocument } from '#model/document/openDocument.ts';
import { writeInto } from '#model/document/writeInto.ts';
import { furnished } from '../../../support/furnished.ts';

const opened: { close(): Promise<unknown> }[] = [];
const track = <T extends { close(): Promise<unknown> }>(thing: T): T => {
  opened.push(thing);
  return thing;
};
afterEach(async () => {
  vi.restoreAllMocks();
  for (const thing of opened.splice(0).reverse()) await thing.close();
});

let stores = 0;
/** Stores of one test share a device; `name` keeps their channels apart from other tests'. */
const device = (): DeviceStoreOptions & { factory: IDBFactory } => ({
  factory: new IDBFactory(),
  name: `device-${++stores}`,
  retryAfter: 20,
});
const open = (options: DeviceStoreOptions): DeviceStore => track(openDeviceStore(options));
async function openTab(options: DeviceStoreOptions, id = 'room') {
  const document = openDocument(new Y.Doc());
  const keeping = track(open(options).keep(id, document.doc));
  const had = await keeping.loaded;
  return { document, keeping, had };
}
type Opened = Pick<ReturnType<typeof createDocument>, 'read'>;
const xOf = (document: Opened) => document.read().arrangements[0]?.pieces[0]?.x;
const until = async (holds: () => boolean): Promise<void> => vi.waitFor(() => expect(holds()).toBe(true), { timeout: 3000, interval: 5 });
async function count(options: { factory: IDBFactory; name?: string }, name: 'updates' | 'snapshots'): Promise<number> {
  const database = await openDatabase(options.factory, options.name ?? '');
  const request = database.transaction([name]).objectStore(name).count();
  const found = await new Promise<number>((resolve) => {
    request.onsuccess = () => resolve(request.result);
  });
  database.close();
  return found;
}

describe('what this device keeps', () => {
  it('is there at the next opening, whole', async () => {
    const here = device();
    const first = await openTab(here);
    expect(first.had).toBe(false);
    writeInto(first.document.doc, furnished());
    first.document.commands.movePiece('a1', 's1', { x: 1234, y: 1 });
    expect(first.keeping.state().here).toBe('keeping');
    await first.keeping.settled();
    expect(first.keeping.state()).toEqual({ here: 'kept', trouble: null });
    const second = await openTab(here);
    expect(second.had).toBe(true);
    expect(exportClassroom(second.document)).toEqual(exportClassroom(first.document));
    expect(second.document.undo.canTakeBack()).toBe(false);
  });

  it('includes what was in the document before', async () => {
    const here = device();
    const doc = new Y.Doc();
    writeInto(doc, furnished());
    const keeping = track(open(here).keep('room', doc));
    await keeping.loaded;
    await keeping.settled();
    expect((await openTab(here)).document.read().name).toBe('Plain room');
  });

  it('says kept only once the transaction is complete', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    const said: [string, number][] = [];
    let rows = 0;
    keeping.subscribe(() => said.push([keeping.state().here, rows]));
    const add = IDBObjectStore.prototype.add;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args) {
      const request = add.apply(this, args);
      request.transaction?.addEventListener('complete', () => rows++);
      return request;
    });
    writeInto(document.doc, furnished());
    await keeping.settled();
    expect(said).toEqual([
      ['keeping', 0],
      ['kept', 1],
    ]);
  });

  it('lists its classrooms by name, last opened first, and forgets one when told', async () => {
    let clock = 100;
    const here = { ...device(), now: () => clock++ };
    for (const id of ['one', 'two']) {
      const { document, keeping } = await openTab(here, id);
      writeInto(document.doc, { ...furnished(), name: `Room ${id}` });
      await keeping.settled();
    }
    const store = open(here);
    expect((await store.classrooms()).map(({ id, name }) => [id, name])).toEqual([
      ['two', 'Room two'],
      ['one', 'Room one'],
    ]);
    await openTab(here, 'one');
    await vi.waitFor(async () => expect((await store.classrooms())[0]?.id).toBe('one'));
    await store.forget('one');
    expect((await store.classrooms()).map(({ id }) => id)).toEqual(['two']);
    expect((await openTab(here, 'one')).had).toBe(false);
  });
});

describe('a classroom that is forgotten while it is open', () => {
  it('is kept whole again by the next change', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    writeInto(document.doc, furnished());
    await keeping.settled();
    await open(here).forget('room');
    document.commands.movePiece('a1', 's1', { x: 8, y: 8 });
    await keeping.settled();
    expect((await openTab(here)).document.read()).toEqual(document.read());
  });
});

describe('when keeping fails', () => {
  it('says why when there is no room, keeps nothing back, and says kept once it worked', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    writeInto(document.doc, furnished());
    await keeping.settled();
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    document.commands.movePiece('a1', 's1', { x: 1, y: 1 });
    document.commands.movePiece('a1', 's1', { x: 2, y: 2 });
    await keeping.settled();
    expect(keeping.state()).toMatchObject({ here: 'failed', trouble: expect.stringContaining('no room left') });
    document.commands.movePiece('a1', 's1', { x: 3, y: 3 });
    await keeping.settled();
    expect(keeping.state().here).toBe('failed');
    full.mockRestore();
    await until(() => keeping.state().here === 'kept');
    expect(keeping.state().trouble).toBeNull();
    expect(xOf((await openTab(here)).document)).toBe(3);
  });

  it('takes a transaction that the browser aborts at the end for not kept', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    const add = IDBObjectStore.prototype.add;
    let aborted = 0;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args) {
      const request = add.apply(this, args);
      if (aborted++ === 0) request.onsuccess = () => request.transaction?.abort();
      return request;
    });
    writeInto(document.doc, furnished());
    await keeping.settled();
    expect(keeping.state().here).toBe('failed');
    expect(await count(here, 'updates')).toBe(0);
    await until(() => keeping.state().here === 'kept');
    expect((await openTab(here)).had).toBe(true);
  });

  it('lets the classroom be used where nothing can be kept', async () => {
    const { document, keeping, had } = await openTab({
      name: 'none',
      factory: {
        open: () => {
          throw new DOMException('private', 'SecurityError');
        },
      } as unknown as IDBFactory,
    });
    expect(had).toBe(false);
    writeInto(document.doc, furnished());
    await keeping.settled();
    expect(document.read().name).toBe('Plain room');
    expect(keeping.state()).toMatchObject({ here: 'failed', trouble: expect.stringContaining('window is private') });
  });

  it('leaves out a row that cannot be read, tells so and does not delete it', async () => {
    const here = device();
    const first = await openTab(here);
    writeInto(first.document.doc, furnished());
    await first.keeping.settled();
    const database = await openDatabase(here.factory, here.name ?? '');
    await new Promise((resolve) => {
      const transaction = database.transaction(['updates'], 'readwrite');
      transaction.objectStore('updates').add({ classroom: 'room', update: new Uint8Array([9, 9, 9, 200, 1]) });
      transaction.oncomplete = resolve;
    });
    database.close();
    const second = await openTab({ ...here, compactAfter: 1 });
    expect(second.document.read().name).toBe('Plain room');
    expect(second.keeping.state()).toMatchObject({ here: 'kept', trouble: expect.stringContaining('cannot be read') });
    second.document.commands.movePiece('a1', 's1', { x: 3, y: 3 });
    await second.keeping.settled();
    expect(await count(here, 'updates')).toBe(3);
  });
});

describe('two tabs', () => {
  it('see each other, and only the one who did it writes', async () => {
    const here = device();
    const one = await openTab(here);
    writeInto(one.document.doc, furnished());
    await one.keeping.settled();
    const two = await openTab(here);
    two.document.commands.movePiece('a1', 's1', { x: 42, y: 1 });
    await until(() => xOf(one.document) === 42);
    one.document.commands.movePiece('a1', 's1', { x: 43, y: 1 });
    await until(() => xOf(two.document) === 43);
    await one.keeping.settled();
    await two.keeping.settled();
    expect(await count(here, 'updates')).toBe(3);
    expect(xOf((await openTab(here)).document)).toBe(43);
  });

  it('when one cannot keep, the other does', async () => {
    const here = device();
    const one = await openTab(here);
    writeInto(one.document.doc, furnished());
    await one.keeping.settled();
    const broken = await openTab({ ...here, retryAfter: 60_000 });
    const add = IDBObjectStore.prototype.add;
    let fails = 1;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (fails-- > 0) throw new DOMException('full', 'QuotaExceededError');
      return add.apply(this, args);
    });
    broken.document.commands.movePiece('a1', 's1', { x: 77, y: 1 });
    await until(() => xOf(one.document) === 77);
    await until(() => one.keeping.state().here === 'kept');
    expect(broken.keeping.state().here).toBe('failed');
    expect(xOf((await openTab(here)).document)).toBe(77);
  });

  it('may both make a snapshot and go on writing, with nothing lost', async () => {
    const here = { ...device(), compactAfter: 3 };
    const one = await openTab(here);
    writeInto(one.document.doc, furnished());
    const two = await openTab(here);
    await until(() => two.document.read().name === 'Plain room');
    for (let i = 0; i < 12; i++) {
      one.document.commands.movePiece('a1', 's1', { x: i, y: 0 });
      two.document.commands.movePiece('a1', 's2', { x: i, y: 0 });
      await one.keeping.settled();
      await two.keeping.settled();
    }
    await until(() => xOf(two.document) === 11);
    const third = await openTab(here);
    expect(third.document.read()).toEqual(one.document.read());
    expect(await count(here, 'snapshots')).toBe(1);
  });
});

describe('the snapshot', () => {
  it('takes the log in, and a reading after it is the same', async () => {
    const here = { ...device(), compactAfter: 5 };
    const { document, keeping } = await openTab(here);
    writeInto(document.doc, furnished());
    for (let x = 0; x < 8; x++) {
      document.commands.movePiece('a1', 's1', { x, y: 0 });
      await keeping.settled();
    }
    await vi.waitFor(async () => expect(await count(here, 'updates')).toBeLessThan(5));
    expect((await openTab(here)).document.read()).toEqual(document.read());
  });

  it('loses nothing when the browser dies between append and snapshot', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    writeInto(document.doc, furnished());
    document.commands.movePiece('a1', 's1', { x: 5, y: 5 });
    await keeping.settled();
    const database = await openDatabase(here.factory, here.name ?? '');
    const remove = vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new DOMException('the browser died', 'UnknownError');
    });
    await expect(compact(database, 'room', undefined)).rejects.toThrow();
    remove.mockRestore();
    expect(await count(here, 'snapshots')).toBe(0);
    expect(xOf((await openTab(here)).document)).toBe(5);
    await compact(database, 'room', undefined);
    expect([await count(here, 'snapshots'), await count(here, 'updates')]).toEqual([1, 0]);
    expect((await openTab(here)).document.read()).toEqual(document.read());
    database.close();
  });

  it('is left to the tab that has the lock', async () => {
    const here = device();
    const { document, keeping } = await openTab(here);
    writeInto(document.doc, furnished());
    await keeping.settled();
    const database = await openDatabase(here.factory, here.name ?? '');
    const taken = {
      request: async (_name: string, _options: object, work: (lock: null) => unknown) => work(null),
    } as unknown as LockManager;
    await compact(database, 'room', taken);
    expect(await count(here, 'updates')).toBe(1);
    const free = {
      request: async (_name: string, _options: object, work: (lock: object) => unknown) => work({}),
    } as unknown as LockManager;
    await compact(database, 'room', free);
    expect(await count(here, 'updates')).toBe(0);
    database.close();
  });
});
