import { RunningAnalysis } from '#model/analysis/running.ts';
import type { Classroom } from '#model/schema/types.ts';
import { withChange } from './classroomChange.ts';
import { judging, withPreview } from './judge.ts';
import type { Answer, Cancel, Failure, Question } from './messages.ts';
import { sayError } from './sayError.ts';

/** ms of work after which a newer message is looked for. */
const PAUSE_AFTER = 8;

/** Lets messages in that came meanwhile. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * A worker's desk: keeps the classroom as it was last sent and what it worked out of it. A newer question, or a cancel,
 * ends the work on the one before: its answer is null. Apart from the worker so that tests can run it.
 */
export function deskOf(pause: () => Promise<void> = nextTurn): (message: Question | Cancel) => Promise<Answer | Failure | null> {
  const running = new RunningAnalysis();
  let classroom: Classroom | null = null;
  let newest = 0;

  return async (message) => {
    const mine = ++newest;
    if ('cancel' in message) return null;
    const { sequence, classroom: part, arrangement, preview, work, mats } = message;
    try {
      if (part && 'whole' in part) classroom = part.whole;
      else if (part && classroom) classroom = withChange(classroom, part.change);
      if (!classroom) throw new Error('no classroom was sent');
      const steps = judging(withPreview(classroom, arrangement, preview), arrangement, work, running, mats);
      for (let since = performance.now(), step = steps.next(); ; step = steps.next()) {
        if (step.done) return { sequence, ...step.value };
        if (performance.now() - since < PAUSE_AFTER) continue;
        await pause();
        if (mine !== newest) return null;
        since = performance.now();
      }
    } catch (error) {
      return { sequence, work, failure: `The checks stopped: ${sayError(error)}. The drawing is safe; the last answers stand.` };
    }
  };
}
