import { type RemarkWish, readRemarkWish } from '#model/document/remarkWish.ts';

type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null;

/** Remarks of a page that may only look, kept on this device until they are seen in the classroom. */
export interface WaitingRemarks {
  list(): readonly RemarkWish[];
  add(wish: RemarkWish): void;
  /** Those with these ids have arrived. @returns whether one of them waited */
  arrived(ids: ReadonlySet<string>): boolean;
}

export function waitingRemarksOf(id: string, storage: Keep): WaitingRemarks {
  const key = `lowshelf.remarks.${id}`;
  let waiting = read();

  function read(): readonly RemarkWish[] {
    try {
      const kept: unknown = JSON.parse(storage?.getItem(key) ?? '[]');
      return Array.isArray(kept) ? kept.flatMap((one) => readRemarkWish(JSON.stringify(one)) ?? []) : [];
    } catch {
      return [];
    }
  }
  function keep(): void {
    try {
      if (waiting.length === 0) storage?.removeItem(key);
      else storage?.setItem(key, JSON.stringify(waiting));
    } catch {
      // They still wait for as long as the page is open; the title block counts them.
    }
  }
  return {
    list: () => waiting,
    add: (wish) => {
      waiting = [...waiting, wish];
      keep();
    },
    arrived: (ids) => {
      const left = waiting.filter(({ id: one }) => !ids.has(one));
      if (left.length === waiting.length) return false;
      waiting = left;
      keep();
      return true;
    },
  };
}
