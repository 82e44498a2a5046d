import type { Mats } from '#model/measures/mats.ts';
import { got } from '../store/database.ts';

/** What a proof of the mats came to, or had come to when it ended. */
export interface KeptProof {
  /** `groundsKey` of the room that it is about */
  readonly grounds: string;
  readonly mats: Mats;
  /** running: nobody ended it, so the page went away meanwhile. */
  readonly end: 'running' | 'stopped' | 'done';
  /** ms since 1970 */
  readonly at: number;
}

/** Proofs that this device keeps, beside the classrooms: never shared, and no part of the document. */
export interface ProofMemory {
  all(classroom: string): Promise<readonly KeptProof[]>;
  /** In place of what was kept for the same grounds. */
  keep(classroom: string, proof: KeptProof): Promise<void>;
  forget(classroom: string): Promise<void>;
}

type Row = KeptProof & { readonly classroom: string };

/** So many of one classroom; the oldest goes. */
const MOST = 20;

/** A small database beside that of the classrooms, so that nothing of theirs hangs on it. */
export function openProofMemory(factory?: IDBFactory, name = 'lowshelf-proofs'): ProofMemory {
  const open = (): Promise<IDBDatabase> =>
    new Promise((resolve, reject) => {
      const from = factory ?? (globalThis as { indexedDB?: IDBFactory }).indexedDB;
      if (!from) throw new DOMException('no database', 'NotFoundError');
      const request = from.open(name, 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore('proofs', { keyPath: ['classroom', 'grounds'] }).createIndex('classroom', 'classroom');
      };
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });

  /** Opened for each errand: they are few, and none is held open in another tab's way. */
  async function errand<T>(mode: IDBTransactionMode, work: (proofs: IDBObjectStore, tell: (found: T) => void) => void): Promise<T> {
    const database = await open();
    try {
      return await new Promise<T>((resolve, reject) => {
        const transaction = database.transaction('proofs', mode);
        let result: T | undefined;
        transaction.oncomplete = () => resolve(result as T);
        transaction.onabort = () => reject(transaction.error ?? new DOMException('The browser gave the write up.', 'AbortError'));
        work(transaction.objectStore('proofs'), (found) => {
          result = found;
        });
      });
    } finally {
      database.close();
    }
  }

  const rowsOf = (proofs: IDBObjectStore, classroom: string, then: (rows: Row[]) => void): void =>
    got(proofs.index('classroom').getAll(IDBKeyRange.only(classroom)), then);

  return {
    all: (classroom) => errand<KeptProof[]>('readonly', (proofs, tell) => rowsOf(proofs, classroom, (rows) => tell(rows.filter(isProof)))),
    keep: (classroom, proof) =>
      errand<void>('readwrite', (proofs) => {
        proofs.put({ ...proof, classroom } satisfies Row);
        rowsOf(proofs, classroom, (rows) => {
          for (const { grounds } of rows.sort((a, b) => b.at - a.at).slice(MOST)) proofs.delete([classroom, grounds]);
        });
      }),
    forget: (classroom) =>
      errand<void>('readwrite', (proofs) =>
        rowsOf(proofs, classroom, (rows) => {
          for (const { grounds } of rows) proofs.delete([classroom, grounds]);
        }),
      ),
  };
}

/** What an older or a broken page left is as good as nothing. */
function isProof({ mats, end }: Row): boolean {
  const { count, upperBound, places, tile } = (mats ?? {}) as Partial<Mats>;
  const isCounted = typeof count === 'number' && typeof upperBound === 'number' && count <= upperBound;
  return isCounted && Array.isArray(places) && places.length === count && typeof tile === 'object' && typeof end === 'string';
}
