import * as Y from 'yjs';
import { got, type LoggedUpdate, type Snapshot } from './database.ts';

/** All that the device keeps of one classroom. */
export interface Rows {
  readonly updates: readonly Uint8Array[];
  /** Keys of the log's rows, without those that cannot be read. */
  readonly keys: readonly IDBValidKey[];
  readonly unreadable: number;
}

/** Reads a classroom's rows inside a transaction on `snapshots` and `updates`. */
export function readRows(transaction: IDBTransaction, id: string, then: (rows: Rows) => void): void {
  const log = transaction.objectStore('updates').index('classroom');
  const only = IDBKeyRange.only(id);
  got(transaction.objectStore('snapshots').get(id), (snapshot: Snapshot | undefined) => {
    got(log.getAllKeys(only), (allKeys) => {
      got(log.getAll(only), (logged: LoggedUpdate[]) => {
        const updates: Uint8Array[] = [];
        const keys: IDBValidKey[] = [];
        let unreadable = 0;
        if (snapshot && isUpdate(snapshot.state)) updates.push(snapshot.state);
        else if (snapshot) unreadable++;
        logged.forEach((row, index) => {
          const key = allKeys[index];
          if (key === undefined || !isUpdate(row.update)) {
            unreadable++;
            return;
          }
          updates.push(row.update);
          keys.push(key);
        });
        then({ updates, keys, unreadable });
      });
    });
  });
}

/** Looked at before it is applied: an update that breaks off half-way would leave half of itself in the document. */
function isUpdate(bytes: unknown): bytes is Uint8Array {
  if (!(bytes instanceof Uint8Array)) return false;
  try {
    Y.decodeUpdate(bytes);
    return true;
  } catch {
    return false;
  }
}
