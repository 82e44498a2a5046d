import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview } from '../session/types.ts';
import { changeBetween } from './classroomChange.ts';
import type { Answer, Cancel, Failure, Question, SentAnswer, Work } from './messages.ts';
import { reportReader } from './sentReport.ts';
import { withoutPicture } from './withoutPicture.ts';

export type Port = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<SentAnswer | Failure>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

/** A moment to be judged. */
export interface Moment {
  readonly sequence: number;
  readonly classroom: Classroom;
  readonly arrangement: string;
  readonly preview: Preview | null;
  /** What a proof found of its mats; null: nothing. */
  readonly mats: Mats | null;
}

interface Hooks {
  readonly start: () => Port;
  readonly hear: (message: Answer | Failure) => void;
  /** The worker died more often than it is started again. */
  readonly giveUp: (why: string) => void;
}

/** How often a worker that died is started again without an answer in between. */
const RESTARTS = 2;
/** ms: a worker that has been busy so long sits in one long step and hears no cancel. */
const STUCK = 1000;

/**
 * One worker with one question out at a time: while it is out, only the latest waits.
 * Sends the whole classroom first, then what changed since.
 */
export function channelTo({ start, hear, giveUp }: Hooks) {
  let port = begin();
  let restarts = 0;
  let sent: Classroom | null = null;
  let out: { moment: Moment; work: Work; since: number } | null = null;
  let waiting: { moment: Moment; work: Work } | null = null;
  let isClosed = false;

  function begin(): Port {
    const worker = start();
    const read = reportReader();
    worker.onmessage = ({ data }) => {
      if (worker !== port) return;
      restarts = 0;
      // Every report is read, one that comes too late as well: the next names what was in it.
      const message = 'failure' in data ? data : { ...data, report: read(data.report) };
      // What was cancelled may have been answered just before.
      if (data.sequence === out?.moment.sequence && data.work === out.work) out = null;
      hear(message);
      goOn();
    };
    worker.onerror = (event) => {
      event.preventDefault();
      if (worker !== port) return;
      revive(event.message);
    };
    return worker;
  }

  function revive(why: string): void {
    if (isClosed) return;
    port.terminate();
    sent = null;
    waiting ??= out;
    out = null;
    restarts += 1;
    if (restarts > RESTARTS) {
      isClosed = true;
      giveUp(why);
      return;
    }
    port = begin();
    goOn();
  }

  function goOn(): void {
    if (out || !waiting || isClosed) return;
    out = { ...waiting, since: performance.now() };
    waiting = null;
    const { moment, work } = out;
    const { sequence, arrangement, preview, mats } = moment;
    const classroom = withoutPicture(moment.classroom);
    const part: Question['classroom'] =
      sent === null ? { whole: classroom } : sent === classroom ? null : { change: changeBetween(sent, classroom) };
    sent = classroom;
    port.postMessage({ sequence, classroom: part, arrangement, preview, work, mats } satisfies Question);
  }

  return {
    ask(moment: Moment, work: Work): void {
      waiting = { moment, work };
      goOn();
    },
    /** Ends the work on what is out and on what waits; what hears nothing with the worker itself. */
    cancel(): void {
      waiting = null;
      if (!out || isClosed) return;
      if (performance.now() - out.since > STUCK) {
        port.terminate();
        sent = null;
        port = begin();
      } else port.postMessage({ cancel: true } satisfies Cancel);
      out = null;
    },
    close(): void {
      isClosed = true;
      port.terminate();
    },
  };
}
