export type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null;

/** A list kept on this device that several tabs of one browser change. */
export interface KeptList<T> {
  list(): readonly T[];
  change(make: (list: readonly T[]) => readonly T[]): void;
  /** Changed here or by another tab. */
  subscribe(listener: () => void): () => void;
  close(): void;
}

/**
 * Each change is made to what lies in the storage then, so that two tabs do not write over each other.
 * @param read one entry as it was kept; null: it is none
 */
export function keptList<T>(key: string, storage: Keep, read: (kept: unknown) => T | null): KeptList<T> {
  const listeners = new Set<() => void>();
  /** What was kept last could be kept; otherwise it lies in this page alone. */
  let isKept = true;
  let list = stored();

  function stored(): readonly T[] {
    try {
      const given: unknown = JSON.parse(storage?.getItem(key) ?? '[]');
      return Array.isArray(given) ? given.flatMap((one) => read(one) ?? []) : [];
    } catch {
      return [];
    }
  }
  function put(next: readonly T[]): void {
    list = next;
    try {
      if (next.length === 0) storage?.removeItem(key);
      else storage?.setItem(key, JSON.stringify(next));
      isKept = storage !== null;
    } catch {
      isKept = false;
    }
  }
  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  // Storage tells the other tabs, never the one that wrote.
  const heed = (event: Event): void => {
    const { key: changed } = event as StorageEvent;
    if (changed !== key || !isKept) return;
    list = stored();
    tell();
  };
  const page = (globalThis as { window?: Pick<Window, 'addEventListener' | 'removeEventListener'> }).window;
  page?.addEventListener('storage', heed);

  return {
    list: () => list,
    change(make) {
      put(make(isKept && storage ? stored() : list));
      tell();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    close() {
      page?.removeEventListener('storage', heed);
      listeners.clear();
    },
  };
}
