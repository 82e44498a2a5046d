import { viewIdOf } from '#model/document/viewId.ts';
import type { Storage } from './storage.ts';

/** Keeps nothing beyond the process: for tests, and for a server that is asked to forget (DATA=memory). */
export function memoryStorage(): Storage {
  const rooms = new Map<string, { snapshot: Uint8Array | null; log: { number: number; update: Uint8Array }[] }>();
  const views = new Map<string, string>();
  let last = 0;
  const roomOf = (id: string) => {
    const there = rooms.get(id);
    if (there) return there;
    const made = { snapshot: null, log: [] };
    rooms.set(id, made);
    views.set(viewIdOf(id), id);
    return made;
  };
  return {
    load: async (id) => {
      const room = rooms.get(id);
      if (!room) return { snapshot: null, updates: [], last: 0 };
      return { snapshot: room.snapshot, updates: room.log.map(({ update }) => update), last: room.log.at(-1)?.number ?? 0 };
    },
    commit: async (entries) => {
      // Copied: a buffer may be a view on what the socket reuses.
      for (const { classroom, update } of entries) roomOf(classroom).log.push({ number: ++last, update: update.slice() });
    },
    replace: async (id, state, upTo) => {
      const room = roomOf(id);
      room.snapshot = state.slice();
      room.log = room.log.filter(({ number }) => number > upTo);
    },
    ofView: async (view) => views.get(view) ?? null,
    close: async () => undefined,
  };
}
