import * as Y from 'yjs';
import { transact } from './database.ts';
import { readRows } from './rows.ts';

/**
 * Puts the log of a classroom into one snapshot. One transaction: a crash before, in or after it loses nothing.
 * Through a loaded document, which forgets overwritten values; merging the log alone would not.
 * Two tabs take turns where the browser has locks; without them the transaction itself keeps it right.
 */
export async function compact(database: IDBDatabase, id: string, locks: LockManager | undefined): Promise<void> {
  const work = () =>
    transact(database, ['snapshots', 'updates'], 'readwrite', (transaction) => {
      readRows(transaction, id, ({ updates, keys, unreadable }) => {
        // With a snapshot that cannot be read nothing may be written over it.
        if (keys.length === 0 || unreadable > 0) return;
        const doc = new Y.Doc();
        for (const update of updates) Y.applyUpdate(doc, update);
        transaction.objectStore('snapshots').put({ id, state: Y.encodeStateAsUpdate(doc) });
        for (const key of keys) transaction.objectStore('updates').delete(key);
        doc.destroy();
      });
    });
  if (!locks) return work();
  await locks.request(`lowshelf:compact:${id}`, { ifAvailable: true }, (lock) => (lock ? work() : undefined));
}
