import { useEffect, useRef, useState } from 'react';
import type { PageAnswer, PageFailure, PageQuestion } from './messages.ts';

interface Held {
  readonly worker: Worker;
  isBusy: boolean;
}

/**
 * What a page's check says of its rooms, worked out beside the drawing; null until it has answered. Who leafs from page to
 * page asks the same worker; one that is still at the page before is ended.
 */
export function usePageAnswer(question: PageQuestion): PageAnswer | PageFailure | null {
  const held = useRef<Held | null>(null);
  const [answer, setAnswer] = useState<PageAnswer | PageFailure | null>(null);
  useEffect(() => {
    if (held.current?.isBusy) end(held);
    held.current ??= {
      worker: new Worker(new URL('../worker/worker.ts', import.meta.url), { type: 'module', name: 'page' }),
      isBusy: false,
    };
    const mine = held.current;
    mine.isBusy = true;
    mine.worker.onmessage = ({ data }: MessageEvent<PageAnswer | PageFailure>) => {
      mine.isBusy = false;
      setAnswer(data);
    };
    mine.worker.onerror = (event) => {
      event.preventDefault();
      setAnswer({ rule: question.rule, failure: 'The two rooms could not be judged here: the browser stopped it.' });
    };
    mine.worker.postMessage(question);
  }, [question]);
  useEffect(() => () => end(held), []);
  return answer?.rule === question.rule ? answer : null;
}

function end(held: { current: Held | null }): void {
  held.current?.worker.terminate();
  held.current = null;
}
