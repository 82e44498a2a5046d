import type * as Y from 'yjs';
import { got, type KnownClassroom, openDatabase, transact } from './database.ts';
import { type Keeping, type KeepOptions, keepDocument } from './keepDocument.ts';

/** What this device keeps: the list of its classrooms, and each one while it is open. */
export interface DeviceStore {
  /** The classrooms on this device, last opened first. */
  classrooms(): Promise<readonly KnownClassroom[]>;
  /** Loads what the device has into the document and keeps what changes. */
  keep(id: string, doc: Y.Doc): Keeping;
  /** Deletes a classroom from this device; what a server has stays there. */
  forget(id: string): Promise<void>;
  /** Whether the browser promised not to clear what is kept; a hint, asked for once something is there. */
  askToStay(): Promise<boolean>;
  close(): Promise<void>;
}

export interface DeviceStoreOptions extends Partial<Pick<KeepOptions, 'locks' | 'nameOf' | 'now' | 'retryAfter' | 'compactAfter'>> {
  readonly factory?: IDBFactory;
  readonly name?: string;
}

export function openDeviceStore(options: DeviceStoreOptions = {}): DeviceStore {
  const name = options.name ?? 'lowshelf';
  let opening: Promise<IDBDatabase> | null = null;

  /** Opened at need, and again when the browser closed it or opening failed. */
  const database = (): Promise<IDBDatabase> => {
    opening ??= open().catch((error: unknown) => {
      opening = null;
      throw error;
    });
    return opening;
  };
  const open = async (): Promise<IDBDatabase> => {
    const factory = options.factory ?? (globalThis as { indexedDB?: IDBFactory }).indexedDB;
    if (!factory) throw new DOMException('no database', 'NotFoundError');
    const opened = await openDatabase(factory, name);
    const drop = (): void => {
      opening = null;
    };
    opened.onclose = drop;
    opened.onversionchange = () => {
      opened.close();
      drop();
    };
    return opened;
  };

  return {
    classrooms: async () => {
      const found: KnownClassroom[] = [];
      await transact(await database(), ['classrooms'], 'readonly', (transaction) =>
        got(transaction.objectStore('classrooms').getAll(), (all: KnownClassroom[]) => found.push(...all)),
      );
      return found.sort((a, b) => b.opened - a.opened);
    },
    keep: (id, doc) =>
      keepDocument(id, doc, {
        database,
        channel: `${name}:${id}`,
        locks: options.locks ?? (globalThis.navigator as Partial<Navigator> | undefined)?.locks,
        nameOf: options.nameOf ?? nameOf,
        now: options.now ?? Date.now,
        retryAfter: options.retryAfter ?? 1_000,
        compactAfter: options.compactAfter ?? 200,
      }),
    forget: async (id) => {
      await transact(await database(), ['classrooms', 'snapshots', 'updates'], 'readwrite', (transaction) => {
        transaction.objectStore('classrooms').delete(id);
        transaction.objectStore('snapshots').delete(id);
        const updates = transaction.objectStore('updates');
        got(updates.index('classroom').getAllKeys(IDBKeyRange.only(id)), (keys) => {
          for (const key of keys) updates.delete(key);
        });
      });
    },
    askToStay: async () => {
      // Absent on plain http other than localhost.
      const storage = (globalThis.navigator as Partial<Navigator> | undefined)?.storage;
      if (!storage?.persist) return false;
      return (await storage.persisted()) || (await storage.persist());
    },
    close: async () => {
      const opened = await opening?.catch(() => null);
      opened?.close();
      opening = null;
    },
  };
}

function nameOf(doc: Y.Doc): string {
  const name = doc.getMap<unknown>('classroom').get('name');
  return typeof name === 'string' ? name.slice(0, 200) : '';
}
