import type { Report } from '#model/analysis/report.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Analyst } from '../session/analyst.ts';
import type { Preview } from '../session/types.ts';
import { changeBetween } from './classroomChange.ts';
import type { Answer, Aside, Failure, Question } from './messages.ts';

type Port = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<Answer | Failure>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};
const RESTARTS = 2;

/** An analyst in a worker of its own. A worker that dies is started again, twice; then it says so. */
export function createAnalyst(start: () => Port = startWorker): Analyst & { aside(): Aside } {
  const listeners = new Set<() => void>();
  let port = begin();
  let restarts = 0;
  let sequence = 0;
  let sent: Classroom | null = null;
  let asked: { classroom: Classroom; arrangement: string; preview: Preview | null } | null = null;
  let isLiveOut = false;
  let isPending = false;
  let report: Report | null = null;
  let aside: Aside = { places: null };
  let trouble: string | null = null;
  let isThinking = false;

  function begin(): Port {
    const worker = start();
    worker.onmessage = ({ data }) => hear(data);
    worker.onerror = (event) => {
      event.preventDefault();
      revive(event.message);
    };
    return worker;
  }

  function revive(why: string): void {
    port.terminate();
    sent = null;
    isLiveOut = false;
    if (restarts >= RESTARTS) {
      trouble = `The checks cannot run here (${why || 'the browser refused'}). The drawing works and is kept; load the page again for the checks.`;
      isThinking = false;
      tell();
      return;
    }
    restarts += 1;
    port = begin();
    if (asked) post(false);
  }

  function post(prove: boolean): void {
    if (!asked) return;
    sequence += 1;
    const { classroom, arrangement, preview } = asked;
    const part: Question['classroom'] =
      sent === null ? { whole: classroom } : sent === classroom ? null : { change: changeBetween(sent, classroom) };
    sent = classroom;
    isLiveOut = true;
    isPending = false;
    isThinking = true;
    port.postMessage({ sequence, classroom: part, arrangement, preview, prove } satisfies Question);
  }

  function hear(message: Answer | Failure): void {
    if (message.sequence !== sequence) return;
    isLiveOut = false;
    if ('failure' in message) {
      trouble = message.failure;
      isThinking = false;
    } else {
      restarts = 0;
      report = message.report;
      aside = message.aside;
      trouble = message.troubles.length === 0 ? null : message.troubles.join(' ');
      isThinking = message.stage === 'live';
    }
    if (isPending) post(false);
    tell();
  }

  function tell(): void {
    for (const listener of listeners) listener();
  }

  return {
    ask(classroom, arrangement, preview) {
      if (asked?.classroom === classroom && asked.arrangement === arrangement && asked.preview === preview) return;
      asked = { classroom, arrangement, preview };
      // One live question at a time: while it is out, only the latest waits.
      if (isLiveOut) isPending = true;
      else post(false);
    },
    prove() {
      post(true);
    },
    report: () => report,
    aside: () => aside,
    trouble: () => trouble,
    isThinking: () => isThinking,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      port.terminate();
      listeners.clear();
    },
  };
}

function startWorker(): Port {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'checks' });
}
