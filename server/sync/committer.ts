import type { Entry, Storage } from '../storage/storage.ts';

/** What waits for a commit: its updates, and what to do after. */
interface Waiting {
  readonly entries: readonly Entry[];
  /** It is committed. */
  readonly done: () => void;
  /** It is not, and never will be. */
  readonly failed: (error: unknown) => void;
}

export interface Committer {
  /** Asks for a commit in this turn of the loop, together with all else that comes in it. */
  add(waiting: Waiting): void;
  /** Resolves when nothing waits. */
  idle(): Promise<void>;
}

/**
 * Group commits: all that comes in one turn of the event loop is one transaction, so that a burst of a drag
 * costs one write to the disk and a single change does not wait for a timer.
 * @param onFailure told once per group that could not be saved.
 */
export function createCommitter(storage: Storage, onFailure: (error: unknown) => void): Committer {
  let waiting: Waiting[] = [];
  let running: Promise<void> | null = null;

  const run = async (): Promise<void> => {
    while (waiting.length > 0) {
      await new Promise((resolve) => setImmediate(resolve));
      const group = waiting;
      waiting = [];
      try {
        const entries = group.flatMap((one) => one.entries);
        if (entries.length > 0) await storage.commit(entries);
      } catch (error) {
        onFailure(error);
        for (const { failed } of group) failed(error);
        continue;
      }
      for (const { done } of group) done();
    }
  };

  return {
    add: (entry) => {
      waiting.push(entry);
      running ??= run().finally(() => {
        running = null;
      });
    },
    idle: async () => {
      while (running) await running;
    },
  };
}
