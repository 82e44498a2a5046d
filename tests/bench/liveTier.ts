import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { analyse } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';
import { percentiles, type Times } from './percentiles.ts';

function benchRoom(name: string): Classroom {
  const read = readClassroomFile(readFileSync(resolve('tests/bench/rooms', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} cannot be read: ${JSON.stringify(read.problems[0])}`);
  return read.classroom;
}

/** Milliseconds of the whole live tier while the first shelf is dragged by 10 mm a frame. */
export function liveTierTimes(name: string, frames: number): Times {
  const classroom = benchRoom(name);
  const arrangement = classroom.arrangements[0];
  const piece = arrangement?.pieces.find((p) => p.kind === 'shelf');
  if (!arrangement || !piece) throw new Error(`${name} has no shelf to drag`);
  const took: number[] = [];
  for (let frame = -5; frame < frames; frame++) {
    const moved = applyEdits(classroom, arrangement.id, [{ do: 'move-piece', piece: piece.id, x: piece.x + frame * 10, y: piece.y }]);
    const start = performance.now();
    analyse(moved, { tiers: ['live'] });
    if (frame >= 0) took.push(performance.now() - start);
  }
  return percentiles(took);
}
