import { readClassroom } from '#model/schema/readFile.ts';
import { announcer } from '../session/announcer.ts';
import { openAsNew } from '../session/starts.ts';

/** A fresh copy of the invented class, under an address of its own. */
export async function openDemoRoom(): Promise<void> {
  try {
    const { default: file } = await import('../demo/demo-room.json');
    const read = readClassroom(file);
    if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: found ${p.found}, expected ${p.expected}`).join('; '));
    openAsNew(read.classroom);
  } catch (error) {
    announcer.say(`The demo room could not be laid out: ${error instanceof Error ? error.message : String(error)}`);
  }
}
