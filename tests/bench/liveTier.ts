import { analyse } from '#model/analysis/report.ts';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import type { Classroom } from '#model/schema/types.ts';
import { percentiles, type Times } from './percentiles.ts';

/** Frames before the first that is timed: some seconds of dragging, after which the engine has translated what it will. */
const WARM_UP = 200;
/** 10 mm apart: over a metre, and again from the first. */
const PLACES = 100;

/** Milliseconds of the whole live tier while the first shelf is dragged by 10 mm a frame. */
interface LiveTimes {
  /** As a worker answers it: the analysis follows the drag. */
  readonly following: Times;
  /** The same, each place of the shelf at the least of its times: what of the others is the collector, and the machine's other work. */
  readonly unhindered: Times;
  /** Every frame from the start, as after opening a file. */
  readonly fromTheStart: Times;
}

export function liveTierTimes(classroom: Classroom, frames: number): LiveTimes {
  const running = new RunningAnalysis();
  const following = dragged(classroom, frames, (moved) => running.analyse(moved, { tiers: ['live'] }));
  const least = Array.from({ length: Math.min(PLACES, frames) }, (_, place) =>
    Math.min(...following.filter((_, frame) => frame % PLACES === place)),
  );
  return {
    following: percentiles(following),
    unhindered: percentiles(least),
    fromTheStart: percentiles(dragged(classroom, Math.ceil(frames / 5), (moved) => analyse(moved, { tiers: ['live'] }))),
  };
}

function dragged(classroom: Classroom, frames: number, judge: (moved: Classroom) => unknown): number[] {
  const arrangement = classroom.arrangements[0];
  const piece = arrangement?.pieces.find((p) => p.kind === 'shelf');
  if (!arrangement || !piece) throw new Error(`${classroom.name} has no shelf to drag`);
  const took: number[] = [];
  for (let frame = -WARM_UP; frame < frames; frame++) {
    const moved = applyEdits(classroom, arrangement.id, [
      { do: 'move-piece', piece: piece.id, x: piece.x + (frame % PLACES) * 10, y: piece.y },
    ]);
    const start = performance.now();
    judge(moved);
    if (frame >= 0) took.push(performance.now() - start);
  }
  return took;
}
