import { RunningAnalysis } from '#model/analysis/running.ts';
import type { Classroom } from '#model/schema/types.ts';
import { withChange } from './classroomChange.ts';
import { judge, withPreview } from './judge.ts';
import type { Answer, Failure, Question } from './messages.ts';
import { sayError } from './sayError.ts';

/** A worker's desk: keeps the classroom as it was last sent and answers one question after another. Apart from the worker so that tests can run it. */
export function deskOf(): (question: Question) => Answer | Failure {
  let classroom: Classroom | null = null;
  const running = new RunningAnalysis();

  return ({ sequence, classroom: part, arrangement, preview, work }) => {
    try {
      if (part && 'whole' in part) classroom = part.whole;
      else if (part && classroom) classroom = withChange(classroom, part.change);
      if (!classroom) throw new Error('no classroom was sent');
      return { sequence, ...judge(withPreview(classroom, arrangement, preview), arrangement, work, undefined, running) };
    } catch (error) {
      return { sequence, work, failure: `The checks stopped: ${sayError(error)}. The drawing is safe; the last answers stand.` };
    }
  };
}
