/** The classrooms opened on this device, latest first: only names and addresses, for the start page. */
export interface RoomHere {
  readonly id: string;
  readonly name: string;
  /** ISO time of the last opening */
  readonly openedAt: string;
}

const KEY = 'lowshelf.rooms';
const MOST = 50;

export function readRoomsHere(): RoomHere[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isRoomHere) : [];
  } catch {
    return [];
  }
}

export function noteRoomHere(id: string, name: string, now: Date = new Date()): void {
  const others = readRoomsHere().filter((room) => room.id !== id);
  keep([{ id, name, openedAt: now.toISOString() }, ...others].slice(0, MOST));
}

/** Takes a classroom off the list; the list is all that changes. */
export function forgetRoomHere(id: string): void {
  keep(readRoomsHere().filter((room) => room.id !== id));
}

function keep(rooms: readonly RoomHere[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(rooms));
  } catch {
    // Only the short-cut on the start page is lost; the classroom itself is kept elsewhere.
  }
}

function isRoomHere(value: unknown): value is RoomHere {
  if (typeof value !== 'object' || value === null) return false;
  const room = value as Record<string, unknown>;
  return typeof room.id === 'string' && typeof room.name === 'string' && typeof room.openedAt === 'string';
}
