import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

export function benchRoom(name: string): Classroom {
  const read = readClassroomFile(readFileSync(resolve('tests/bench/rooms', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} cannot be read: ${JSON.stringify(read.problems[0])}`);
  return read.classroom;
}
