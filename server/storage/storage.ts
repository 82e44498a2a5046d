/** One update to be written, in the order it was received. */
export interface Entry {
  readonly classroom: string;
  readonly update: Uint8Array;
}

/** All that is committed of one classroom. */
interface Stored {
  /** The state up to the last compaction; null: none yet. */
  readonly snapshot: Uint8Array | null;
  /** Updates since, in order. */
  readonly updates: readonly Uint8Array[];
  /** Number of the last update; 0: none. */
  readonly last: number;
}

/**
 * Where the server keeps classrooms. Every adapter passes the one suite in tests/contracts/storage.ts.
 * A promise that resolves means: it is there after a power cut.
 */
export interface Storage {
  load(classroom: string): Promise<Stored>;
  /** All of them or none. @throws when the medium refuses; nothing of the batch is kept then. */
  commit(entries: readonly Entry[]): Promise<void>;
  /** Puts a state in place of all updates up to a number, in one transaction; later ones stay. */
  replace(classroom: string, state: Uint8Array, upTo: number): Promise<void>;
  /** The classroom that an address for looking belongs to; null: it is none. */
  ofView(view: string): Promise<string | null>;
  close(): Promise<void>;
}
