import { useEffect, useState } from 'react';
import type { Promised } from '#model/measures/trial.ts';
import type { Classroom } from '#model/schema/types.ts';
import { isoToday } from '../../text/sayDay.ts';
import { withoutPicture } from '../../worker/withoutPicture.ts';
import type { TrialAnswer, TrialQuestion } from './trialDesk.ts';

/** ms of rest before what is typed is judged. */
const QUIET = 350;

/** The checks with the promised children in the class, in a worker of its own; null: nothing is asked, or they are being worked out. */
export function useTrialFindings(classroom: Classroom, arrangement: string, promised: Promised | null): TrialAnswer | null {
  const [answer, setAnswer] = useState<TrialAnswer | null>(null);
  useEffect(() => {
    setAnswer(null);
    if (!promised) return;
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      try {
        worker = new Worker(new URL('../../worker/worker.ts', import.meta.url), { type: 'module', name: 'trial' });
      } catch {
        setAnswer({ failure: 'this browser cannot' });
        return;
      }
      worker.onmessage = ({ data }: MessageEvent<TrialAnswer>) => setAnswer(data);
      worker.onerror = (event) => {
        event.preventDefault();
        setAnswer({ failure: event.message || 'the browser refused' });
      };
      worker.postMessage({ promised, classroom: withoutPicture(classroom), arrangement, today: isoToday() } satisfies TrialQuestion);
    }, QUIET);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [classroom, arrangement, promised]);
  return answer;
}
