import type { Storage } from '../storage/storage.ts';
import { createCommitter } from './committer.ts';
import { compact } from './compact.ts';
import { openRoom, type Room } from './room.ts';

export interface Rooms {
  /** The room of a classroom, opened at need. Null: its last commit failed just now, come again later. */
  enter(id: string): Promise<Room | null>;
  /** Called when a peer has left. */
  left(id: string, room: Room): void;
  connections(): number;
  /** Waits for what is to be committed, then closes every room. */
  close(code: number, reason: string): Promise<void>;
}

export interface RoomsOptions {
  /** ms that a room stays open without anybody in it */
  readonly linger: number;
  /** ms without new attempts after a commit that failed */
  readonly rest: number;
  /** updates in the log that make a compaction worth while when everybody has left */
  readonly compactAfter: number;
  /** and while somebody is there: a page may stay open for weeks */
  readonly compactOpenAfter: number;
  readonly log: (text: string) => void;
}

export function createRooms(storage: Storage, options: RoomsOptions): Rooms {
  const rooms = new Map<string, Promise<Room>>();
  /** Rooms that are open, with the promise each was entered by. */
  const opened = new Map<Room, Promise<Room>>();
  const resting = new Map<string, number>();
  const leaving = new Map<string, ReturnType<typeof setTimeout>>();
  const compacting = new Map<Room, Promise<void>>();
  const committer = createCommitter(storage, (error) =>
    options.log(`Could not save: ${sayError(error)}. Connections are closed; pages send again.`),
  );

  const tidy = async (id: string, room: Room): Promise<void> => {
    try {
      room.tidied(await compact(id, storage));
    } catch (error) {
      options.log(`Could not tidy a classroom's log: ${sayError(error)}.`);
    } finally {
      compacting.delete(room);
    }
  };
  const tidySoon = (id: string, room: Room): void => {
    if (!compacting.has(room)) compacting.set(room, tidy(id, room));
  };
  const open = (id: string): Promise<Room> => {
    const onCommitted = (room: Room): void => {
      if (room.logged() >= options.compactOpenAfter) setImmediate(tidySoon, id, room);
    };
    const opening = openRoom(id, storage, committer, onCommitted).then((room) => {
      opened.set(room, opening);
      return room;
    });
    rooms.set(id, opening);
    return opening;
  };
  const drop = (id: string, room: Room): void => {
    // A newer room may stand under the same id.
    if (rooms.get(id) === opened.get(room)) rooms.delete(id);
    opened.delete(room);
    room.destroy();
  };
  return {
    enter: async (id) => {
      if ((resting.get(id) ?? 0) > Date.now()) return null;
      resting.delete(id);
      const known = rooms.get(id);
      const room = known ? await known : null;
      if (room?.isSound()) return room;
      if (room && opened.has(room)) {
        drop(id, room);
        resting.set(id, Date.now() + options.rest);
        return null;
      }
      try {
        return await (rooms.get(id) ?? open(id));
      } catch (error) {
        rooms.delete(id);
        throw error;
      }
    },
    left: (id, room) => {
      if (room.size() > 0) return;
      clearTimeout(leaving.get(id));
      const timer = setTimeout(() => {
        leaving.delete(id);
        if (room.size() > 0 || !opened.has(room)) return;
        void committer.idle().then(() => {
          if (room.size() > 0 || !opened.has(room)) return;
          drop(id, room);
          if (room.logged() >= options.compactAfter) tidySoon(id, room);
        });
      }, options.linger);
      timer.unref();
      leaving.set(id, timer);
    },
    connections: () => [...opened.keys()].reduce((sum, room) => sum + room.size(), 0),
    close: async (code, reason) => {
      await committer.idle();
      for (const room of opened.keys()) room.close(code, reason);
      for (const timer of leaving.values()) clearTimeout(timer);
      await Promise.all(compacting.values());
      for (const room of opened.keys()) room.destroy();
      opened.clear();
      rooms.clear();
    },
  };
}

export function sayError(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return 'code' in error && typeof error.code === 'string' ? `${error.message} (${error.code})` : error.message;
}
