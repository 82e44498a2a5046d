import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { analyse } from '#model/analysis/report.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

export interface Times {
  readonly p50: number;
  readonly p95: number;
  readonly runs: number;
}

export function benchRoom(name: string): Classroom {
  const read = readClassroomFile(readFileSync(resolve(import.meta.dirname, 'rooms', `${name}.json`), 'utf8'));
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

export function percentiles(values: readonly number[]): Times {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95), runs: sorted.length };
}
