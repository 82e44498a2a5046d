import type { Classroom } from '#model/schema/types.ts';
import { newClassroomId } from './address.ts';

/** Classrooms that were just made or read from a file and wait to be opened under their new address. */
const waiting = new Map<string, Classroom>();

/** Gives a classroom a new address and goes there. Whatever was open stays kept under its own. */
export function openAsNew(classroom: Classroom): void {
  const id = newClassroomId();
  waiting.set(id, classroom);
  // From #demo the address is replaced: going back does not lay out another copy.
  if (location.hash === '#demo') location.replace(`#room=${id}`);
  else location.hash = `room=${id}`;
}

/** The classroom to begin with; null: the address stands for one that exists, here or on the server. */
export const startOf = (id: string): Classroom | null => waiting.get(id) ?? null;
export const forgetStart = (id: string): boolean => waiting.delete(id);
