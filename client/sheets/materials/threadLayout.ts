import type { Thread } from './threads.ts';

interface ThreadMark {
  readonly id: string;
  readonly x: number;
  readonly line: number;
}
interface ThreadRun {
  /** The shelf side's place among the thread's parts; drawn over the run's start. */
  readonly part: number;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  readonly isStart: boolean;
  readonly isEnd: boolean;
}
export interface ThreadLayout {
  readonly marks: readonly ThreadMark[];
  readonly runs: readonly ThreadRun[];
  readonly lines: number;
}

/** px between two steps, and how close they may come before the thread goes on in a new line */
const WIDE = 21;
const CLOSE = 11;
/** px before the first step and between two shelves */
const LEAD = 8;
const BETWEEN = 26;
/** px that the name of a shelf takes over a short run */
const NAME = 62;

/** Lays a thread out in lines of `width` px: steps as far apart as fits, in new lines when even close steps do not fit. */
export function threadLayout(thread: Pick<Thread, 'parts'>, width: number): ThreadLayout {
  const steps = thread.parts.reduce((sum, part) => sum + part.ids.length, 0);
  const spare = width - thread.parts.length * (LEAD * 2 + BETWEEN);
  const pitch = Math.max(CLOSE, Math.min(WIDE, spare / Math.max(1, steps)));
  const marks: ThreadMark[] = [];
  const runs: ThreadRun[] = [];
  let x = 0;
  let line = 0;
  thread.parts.forEach((part, index) => {
    const whole = Math.max(NAME, LEAD * 2 + (part.ids.length - 1) * pitch);
    if (x > 0 && x + Math.min(whole, NAME) > width) {
      line += 1;
      x = 0;
    }
    let from = x;
    let isStart = true;
    let at = x + LEAD;
    for (const id of part.ids) {
      if (at + LEAD > width && at > from + LEAD) {
        runs.push({ part: index, from, to: at - pitch + LEAD, line, isStart, isEnd: false });
        line += 1;
        from = 0;
        at = LEAD;
        isStart = false;
      }
      marks.push({ id, x: at, line });
      at += pitch;
    }
    const to = at - pitch + LEAD;
    runs.push({ part: index, from, to, line, isStart, isEnd: true });
    x = Math.max(to, isStart ? from + NAME - BETWEEN : to) + BETWEEN;
  });
  return { marks, runs, lines: line + 1 };
}
