import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

export const benchRoom = (name: string): Classroom => roomAt(`tests/bench/rooms/${name}.json`);

/** What a person sees first. */
export const demoRoom = (): Classroom => roomAt('client/demo/demo-room.json');

function roomAt(path: string): Classroom {
  const read = readClassroomFile(readFileSync(resolve(path), 'utf8'));
  if (!read.ok) throw new Error(`${path} cannot be read: ${JSON.stringify(read.problems[0])}`);
  return read.classroom;
}
