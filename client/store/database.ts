/** A classroom that lies on this device. */
export interface KnownClassroom {
  readonly id: string;
  readonly name: string;
  /** ms since 1970 */
  readonly opened: number;
}

/** One row of the log: an update that is not in the snapshot yet. */
export interface LoggedUpdate {
  readonly classroom: string;
  readonly update: Uint8Array;
}

export interface Snapshot {
  readonly id: string;
  readonly state: Uint8Array;
}

export type StoreName = 'classrooms' | 'updates' | 'snapshots';
const VERSION = 1;

/**
 * Opens the device's database, made on first use.
 * @throws DOMException when the browser refuses, such as in a private window.
 */
export function openDatabase(factory: IDBFactory, name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open(name, VERSION);
    request.onupgradeneeded = () => {
      const database = request.result;
      database.createObjectStore('classrooms', { keyPath: 'id' });
      database.createObjectStore('snapshots', { keyPath: 'id' });
      // Numbered by the browser, so that two tabs never write the same row.
      database.createObjectStore('updates', { autoIncrement: true }).createIndex('classroom', 'classroom');
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new DOMException('Another tab holds an older version open.', 'VersionError'));
  });
}

/**
 * Runs one transaction; resolves at `oncomplete`, which with strict durability means it is on the disk.
 * `work` may only wait for requests of this transaction.
 */
export function transact<T>(
  database: IDBDatabase,
  stores: readonly StoreName[],
  mode: 'readonly' | 'readwrite',
  work: (transaction: IDBTransaction) => T,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction([...stores], mode, { durability: mode === 'readwrite' ? 'strict' : 'default' });
    let result: T;
    transaction.oncomplete = () => resolve(result);
    transaction.onabort = () =>
      reject(thrown.get(transaction) ?? transaction.error ?? new DOMException('The browser gave the write up.', 'AbortError'));
    try {
      result = work(transaction);
    } catch (error) {
      transaction.onabort = null;
      transaction.abort();
      reject(error);
    }
  });
}

/** What a call back threw: the browser itself would only say that the transaction was aborted. */
const thrown = new WeakMap<IDBTransaction, unknown>();

/** Calls back with what a request found. Inside `transact`, where promises would end the transaction in old engines. */
export function got<T>(request: IDBRequest<T>, then: (found: T) => void): void {
  request.onsuccess = () => {
    try {
      then(request.result);
    } catch (error) {
      if (!request.transaction) throw error;
      thrown.set(request.transaction, error);
      request.transaction.abort();
    }
  };
}
