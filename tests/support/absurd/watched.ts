import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { absurdClasses, absurdRooms, absurdThroughout } from './classroom.ts';

export const absurdFiles = { rooms: absurdRooms, classes: absurdClasses, throughout: absurdThroughout } as const;

export interface FuzzTask {
  readonly kind: keyof typeof absurdFiles;
  /** First seed; one classroom a seed. */
  readonly from: number;
  readonly count: number;
  /** ms of computing after which an answer counts as none */
  readonly mostMs: number;
}
export interface FuzzNews {
  /** The one being judged. */
  readonly seed: number;
  /** What is wrong with it. */
  readonly reason?: string;
  /** The smallest file found that fails as well. */
  readonly file?: string;
  /** ms of computing, where it took long. */
  readonly slow?: number;
  readonly isDone?: true;
}

/** ms without an answer after which a classroom counts as one that never ends, on a busy machine too. */
const HANGS = runs(120_000, 900_000);
/** Enough to see what is wrong. */
const MOST_FAILURES = 5;

/** What fails of so many absurd classrooms; empty: all were read and judged, or refused in plain words, in time. */
export function failuresAmong(task: FuzzTask): Promise<string[]> {
  const script = fileURLToPath(new URL('./fuzzWorker.ts', import.meta.url));
  const child = fork(script, [JSON.stringify(task)], { execArgv: ['--import', 'tsx'] });
  const failures: string[] = [];
  const slow: string[] = [];
  let at = task.from;
  let since = Date.now();
  let isDone = false;
  child.on('message', (news: FuzzNews) => {
    at = news.seed;
    since = Date.now();
    if (news.slow !== undefined) slow.push(`seed ${at}: ${Math.round(news.slow)} ms`);
    isDone ||= news.isDone === true;
    if (news.reason !== undefined) failures.push(`seed ${at}: ${news.reason}\nThe classroom file:\n${news.file}`);
    if (failures.length >= MOST_FAILURES) child.kill('SIGKILL');
  });
  const watch = setInterval(() => {
    if (Date.now() - since < HANGS) return;
    failures.push(
      `seed ${at} never ends\nThe classroom file:\n${JSON.stringify(fc.sample(absurdFiles[task.kind], { seed: at, numRuns: 1 })[0])}`,
    );
    child.kill('SIGKILL');
  }, 1000);
  return new Promise((resolve) => {
    child.once('exit', (code, signal) => {
      clearInterval(watch);
      if (slow.length > 0) console.info(`${task.kind}: ${slow.length} of ${task.count} took long: ${slow.slice(0, 20).join(', ')}`);
      if (!isDone && failures.length === 0) failures.push(`it ended at seed ${at} with ${signal ?? code}`);
      resolve(failures);
    });
  });
}
