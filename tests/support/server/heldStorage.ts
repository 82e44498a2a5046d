import { memoryStorage } from '#server/storage/memoryStorage.ts';
import type { Storage } from '#server/storage/storage.ts';

/** A storage whose commits a test holds back, lets through or refuses. */
export interface HeldStorage extends Storage {
  /** Commits that were asked for and not answered. */
  waiting(): number;
  /** Number of updates in each commit that went through. */
  readonly groups: readonly number[];
  mode: 'through' | 'hold' | 'refuse';
  release(): Promise<void>;
}

export function heldStorage(under: Storage = memoryStorage()): HeldStorage {
  let held: (() => void)[] = [];
  const groups: number[] = [];
  const storage: HeldStorage = {
    ...under,
    mode: 'through',
    groups,
    waiting: () => held.length,
    commit: async (entries) => {
      if (storage.mode === 'hold') await new Promise<void>((resolve) => held.push(resolve));
      if (storage.mode === 'refuse') throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
      await under.commit(entries);
      groups.push(entries.length);
    },
    release: async () => {
      storage.mode = 'through';
      for (const go of held.splice(0)) go();
      held = [];
      await new Promise((resolve) => setTimeout(resolve, 5));
    },
  };
  return storage;
}
