import { openProofMemory } from '../mats/proofMemory.ts';
import { forgetRoomHere, readRoomsHere } from '../session/roomsHere.ts';
import { type DeviceStore, openDeviceStore } from '../store/deviceStore.ts';
import { unconfirmedOf } from '../sync/unconfirmed.ts';

/** A classroom that lies on this device, as the start page lists it. */
export interface KeptRoom {
  readonly id: string;
  readonly name: string;
  /** ms since 1970; null: not known */
  readonly opened: number | null;
}

type Store = Pick<DeviceStore, 'classrooms' | 'forget' | 'close'>;

/** What this device keeps, last opened first; where the browser keeps no database, what was opened here as far as it remembers. */
export async function roomsKeptHere(open: () => Store = openDeviceStore): Promise<readonly KeptRoom[]> {
  const store = open();
  try {
    return await store.classrooms();
  } catch {
    return readRoomsHere().map(({ id, name, openedAt }) => {
      const opened = new Date(openedAt).getTime();
      return { id, name, opened: Number.isNaN(opened) ? null : opened };
    });
  } finally {
    await store.close();
  }
}

/** Deletes a classroom from this device. What a server or another device has of it stays there. @throws DOMException when the browser refuses. */
export async function forgetHere(id: string, open: () => Store = openDeviceStore): Promise<void> {
  const store = open();
  try {
    await store.forget(id);
    await openProofMemory().forget(id);
  } finally {
    await store.close();
  }
  forgetRoomHere(id);
  unconfirmedOf(id, storageOfPage()).note(0);
}

function storageOfPage(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}
