import * as Y from 'yjs';
import { keptOrigin } from '#model/document/origins.ts';
import { compact } from './compact.ts';
import { got, type KnownClassroom, transact } from './database.ts';
import { readRows } from './rows.ts';
import { sayStoreTrouble, UNREADABLE } from './storeTrouble.ts';
import { joinTabs, tabOrigin } from './tabs.ts';

interface KeptHere {
  readonly here: 'kept' | 'keeping' | 'failed' | 'not-yet';
  /** Why, in words, when `here` is failed; a note when a part could not be read. */
  readonly trouble: string | null;
}

/** One classroom that this device keeps while it is open. */
export interface Keeping {
  /** What the device had is in the document. True: it had something. Never rejects; trouble is in `state`. */
  readonly loaded: Promise<boolean>;
  state(): KeptHere;
  subscribe(listener: () => void): () => void;
  /** Resolves when everything so far is kept, or could not be (see `state`). */
  settled(): Promise<void>;
  close(): Promise<void>;
}

export interface KeepOptions {
  readonly database: () => Promise<IDBDatabase>;
  readonly channel: string;
  readonly locks: LockManager | undefined;
  readonly nameOf: (doc: Y.Doc) => string;
  readonly now: () => number;
  /** ms until a failed write is tried again; doubles up to 30 s */
  readonly retryAfter: number;
  /** rows in the log that make a snapshot worth while */
  readonly compactAfter: number;
}

const LONGEST_WAIT = 30_000;

/** Keeps a document on this device: everything that changes it is appended, and "kept" is said once it is on the disk. */
export function keepDocument(id: string, doc: Y.Doc, options: KeepOptions): Keeping {
  const listeners = new Set<() => void>();
  let state: KeptHere = { here: 'not-yet', trouble: null };
  let waiting: Uint8Array[] = [];
  let running: Promise<void> | null = null;
  let retry: ReturnType<typeof setTimeout> | null = null;
  let wait = options.retryAfter;
  let note: string | null = null;
  let rows = 0;
  let isLoaded = false;
  let isClosed = false;

  const set = (here: KeptHere['here'], trouble: string | null): void => {
    if (state.here === here && state.trouble === trouble) return;
    state = { here, trouble };
    for (const listener of [...listeners]) listener();
  };

  const append = async (): Promise<void> => {
    const batch = waiting;
    waiting = [];
    const update = batch.length === 1 && batch[0] ? batch[0] : Y.mergeUpdates(batch);
    try {
      const database = await options.database();
      const known: KnownClassroom = { id, name: options.nameOf(doc), opened: options.now() };
      await transact(database, ['classrooms', 'updates'], 'readwrite', (transaction) => {
        const classrooms = transaction.objectStore('classrooms');
        got(classrooms.get(id), (there: KnownClassroom | undefined) => {
          // Forgotten in another tab or cleared by the browser meanwhile: then the change alone would hang in the air.
          const whole = there ? update : Y.encodeStateAsUpdate(doc);
          transaction.objectStore('updates').add({ classroom: id, update: whole });
          classrooms.put(known);
        });
      });
      rows++;
      wait = options.retryAfter;
      tabs.tell(update, true);
    } catch (error) {
      // Nothing is given up: what could not be kept goes first at the next try.
      waiting.unshift(update);
      tabs.tell(update, false);
      set('failed', sayStoreTrouble(error));
      throw error;
    }
  };

  const run = (): void => {
    if (running || !isLoaded || waiting.length === 0) return;
    if (retry !== null) clearTimeout(retry);
    retry = null;
    // A write that is tried again stays "failed" until it succeeds.
    if (state.here !== 'failed') set('keeping', note);
    running = append().then(
      () => {
        running = null;
        if (waiting.length > 0) return run();
        set('kept', note);
        if (rows >= options.compactAfter) void makeSnapshot();
      },
      () => {
        running = null;
        if (isClosed) return;
        retry = setTimeout(run, wait);
        wait = Math.min(wait * 2, LONGEST_WAIT);
      },
    );
  };

  const makeSnapshot = async (): Promise<void> => {
    rows = 0;
    try {
      await compact(await options.database(), id, options.locks);
    } catch {
      // The log still holds everything; the next snapshot tries again.
    }
  };

  const enqueue = (update: Uint8Array): void => {
    waiting.push(update);
    if (isLoaded && state.here !== 'failed') set('keeping', note);
    queueMicrotask(run);
  };
  const onUpdate = (update: Uint8Array, origin: unknown): void => {
    if (origin !== keptOrigin && origin !== tabOrigin) enqueue(update);
  };
  // A document that was filled before (a file that was read in) is kept too.
  if (doc.store.clients.size > 0) waiting.push(Y.encodeStateAsUpdate(doc));
  doc.on('update', onUpdate);
  // Listening before reading: what another tab keeps in between comes twice rather than not at all.
  const tabs = joinTabs(options.channel, doc, enqueue);

  const load = async (): Promise<boolean> => {
    try {
      const database = await options.database();
      const found = await readAll(database, id);
      rows = found.keys.length;
      if (found.unreadable > 0) note = UNREADABLE;
      doc.transact(() => {
        for (const update of found.updates) Y.applyUpdate(doc, update, keptOrigin);
      }, keptOrigin);
      isLoaded = true;
      set(waiting.length > 0 ? 'keeping' : 'kept', note);
      if (found.updates.length > 0) void touch(database, { id, name: options.nameOf(doc), opened: options.now() });
      if (rows >= options.compactAfter) void makeSnapshot();
      run();
      return found.updates.length > 0;
    } catch (error) {
      isLoaded = true;
      set('failed', sayStoreTrouble(error));
      run();
      return false;
    }
  };

  return {
    loaded: load(),
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    settled: async () => {
      await Promise.resolve();
      while (running) await running;
    },
    close: async () => {
      isClosed = true;
      doc.off('update', onUpdate);
      if (retry !== null) clearTimeout(retry);
      run();
      while (running) await running;
      tabs.close();
      listeners.clear();
    },
  };
}

function readAll(database: IDBDatabase, id: string) {
  let rows: Parameters<Parameters<typeof readRows>[2]>[0] = { updates: [], keys: [], unreadable: 0 };
  return transact(database, ['snapshots', 'updates'], 'readonly', (transaction) => {
    readRows(transaction, id, (found) => {
      rows = found;
    });
  }).then(() => rows);
}

async function touch(database: IDBDatabase, known: KnownClassroom): Promise<void> {
  try {
    await transact(database, ['classrooms'], 'readwrite', (transaction) => transaction.objectStore('classrooms').put(known));
  } catch {
    // Only the order of the list of classrooms hangs on it.
  }
}
