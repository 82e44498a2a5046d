import { analyse } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Classroom } from '#model/schema/types.ts';
import { percentiles, type Times } from './percentiles.ts';

/** Frames before the first that is timed: some seconds of dragging, after which the engine has translated what it will. */
const WARM_UP = 200;

/** Milliseconds of the whole live tier while the first shelf is dragged by 10 mm a frame. */
interface LiveTimes {
  /** As a worker answers it: the analysis follows the drag. */
  readonly following: Times;
  /** Every frame from the start, as after opening a file. */
  readonly fromTheStart: Times;
}

export function liveTierTimes(classroom: Classroom, frames: number): LiveTimes {
  const running = new RunningAnalysis();
  return {
    following: dragged(classroom, frames, (moved) => running.analyse(moved, { tiers: ['live'] })),
    fromTheStart: dragged(classroom, frames, (moved) => analyse(moved, { tiers: ['live'] })),
  };
}

function dragged(classroom: Classroom, frames: number, judge: (moved: Classroom) => unknown): Times {
  const arrangement = classroom.arrangements[0];
  const piece = arrangement?.pieces.find((p) => p.kind === 'shelf');
  if (!arrangement || !piece) throw new Error(`${classroom.name} has no shelf to drag`);
  const took: number[] = [];
  for (let frame = -WARM_UP; frame < frames; frame++) {
    // To and fro over a metre.
    const moved = applyEdits(classroom, arrangement.id, [
      { do: 'move-piece', piece: piece.id, x: piece.x + (frame % 100) * 10, y: piece.y },
    ]);
    const start = performance.now();
    judge(moved);
    if (frame >= 0) took.push(performance.now() - start);
  }
  return percentiles(took);
}
