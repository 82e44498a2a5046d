import { useEffect, useState } from 'react';
import type { PageAnswer, PageFailure, PageQuestion } from './messages.ts';

/** What a page's check says of its rooms, worked out beside the drawing; null until it has answered. */
export function usePageAnswer(question: PageQuestion): PageAnswer | PageFailure | null {
  const [answer, setAnswer] = useState<PageAnswer | PageFailure | null>(null);
  useEffect(() => {
    const worker = new Worker(new URL('../worker/worker.ts', import.meta.url), { type: 'module', name: 'page' });
    worker.onmessage = ({ data }: MessageEvent<PageAnswer | PageFailure>) => setAnswer(data);
    worker.onerror = (event) => {
      event.preventDefault();
      setAnswer({ rule: question.rule, failure: 'The two rooms could not be judged here: the browser stopped it.' });
    };
    worker.postMessage(question);
    return () => worker.terminate();
  }, [question]);
  return answer?.rule === question.rule ? answer : null;
}
