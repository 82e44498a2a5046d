/**
 * How many changes of a classroom the server has not confirmed, remembered over a reload: a page that is opened
 * again without a network must not look as if all were well. Only a number; the changes lie in the store.
 */
export interface Unconfirmed {
  read(): number;
  note(count: number): void;
}

export function unconfirmedOf(id: string, storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null): Unconfirmed {
  const key = `lowshelf.unconfirmed.${id}`;
  let last = -1;
  return {
    read: () => {
      try {
        const count = Number(storage?.getItem(key) ?? 0);
        return Number.isSafeInteger(count) && count > 0 ? count : 0;
      } catch {
        return 0;
      }
    },
    note: (count) => {
      if (count === last) return;
      last = count;
      try {
        if (count === 0) storage?.removeItem(key);
        else storage?.setItem(key, String(count));
      } catch {
        // The device's store says in words that it keeps nothing; this number is the least of it.
      }
    },
  };
}
