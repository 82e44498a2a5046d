type Keep = Pick<Storage, 'getItem' | 'setItem'> | null;

/** Visits remembered: what was written before those is no longer known to be of this device. */
const MOST = 60;

/**
 * The Yjs clients that this device wrote as, on each visit another one. A change that was made here before a reload
 * is still this person's when somebody overwrites it.
 */
export function ownClientsOf(id: string, now: number, storage: Keep): (client: number) => boolean {
  const key = `lowshelf.clients.${id}`;
  const read = (): number[] => {
    try {
      const kept: unknown = JSON.parse(storage?.getItem(key) ?? '[]');
      return Array.isArray(kept) ? kept.filter((one): one is number => Number.isSafeInteger(one)) : [];
    } catch {
      return [];
    }
  };
  let own = new Set([...read(), now]);
  try {
    storage?.setItem(key, JSON.stringify([...own].slice(-MOST)));
  } catch {
    // Only what this visit wrote is known as its own.
  }
  return (client) => {
    if (own.has(client)) return true;
    // Another tab of this device may have come meanwhile.
    own = new Set([...own, ...read()]);
    return own.has(client);
  };
}
