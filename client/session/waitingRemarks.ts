import { type RemarkWish, readRemarkWish } from '#model/document/remarkWish.ts';
import { type Keep, keptList } from './keptList.ts';

/** Remarks of a page that may only look, kept on this device until they are seen in the classroom. */
export interface WaitingRemarks {
  list(): readonly RemarkWish[];
  add(wish: RemarkWish): void;
  /** Those with these ids have arrived. @returns whether one of them waited */
  arrived(ids: ReadonlySet<string>): boolean;
  /** Also those of another tab: whichever reaches the server first hands them on, and the same wish is one remark. */
  subscribe(listener: () => void): () => void;
  close(): void;
}

export function waitingRemarksOf(id: string, storage: Keep): WaitingRemarks {
  const waiting = keptList(`lowshelf.remarks.${id}`, storage, (one) => readRemarkWish(JSON.stringify(one)));
  return {
    list: waiting.list,
    add: (wish) => waiting.change((list) => [...list, wish]),
    arrived: (ids) => {
      if (!waiting.list().some((one) => ids.has(one.id))) return false;
      waiting.change((list) => list.filter((one) => !ids.has(one.id)));
      return true;
    },
    subscribe: waiting.subscribe,
    close: waiting.close,
  };
}
