import { setImmediate } from 'node:timers/promises';
import fc from 'fast-check';
import { wrongAnswersFor } from './answersFor.ts';
import { absurdFiles, type FuzzNews, type FuzzTask } from './watched.ts';

// Judges one absurd file after another in a process of its own, so that one that never ends can be told and ended.
const { kind, from, count, mostMs } = JSON.parse(process.argv[2] ?? '') as FuzzTask;
const files = absurdFiles[kind];
/** Every so manyth is judged as long as the app looks at a room at rest. */
const THOROUGH = 40;
/** ms of computing that are worth a word */
const SLOW = 2000;

let slowest = 0;
const property = (isThorough: boolean) =>
  fc.property(files, (file) => {
    const start = process.cpuUsage();
    const wrong = wrongAnswersFor(JSON.parse(JSON.stringify(file)), isThorough);
    const { user, system } = process.cpuUsage(start);
    const ms = (user + system) / 1000;
    slowest = Math.max(slowest, ms);
    if (ms > mostMs) wrong.push(`it takes ${Math.round(ms)} ms`);
    if (wrong.length > 0) throw new Error(wrong.slice(0, 5).join('; '));
  });

const tell = (news: FuzzNews): boolean | undefined => process.send?.(news);

for (let seed = from; seed < from + count; seed++) {
  slowest = 0;
  tell({ seed });
  // What was told goes out before the next one, which may never end.
  await setImmediate();
  const found = fc.check(property(seed % THOROUGH === 0), { seed, numRuns: 1, interruptAfterTimeLimit: 20_000 });
  if (slowest > SLOW) tell({ seed, slow: slowest });
  if (found.failed) tell({ seed, reason: String(found.errorInstance), file: JSON.stringify(found.counterexample?.[0]) });
}
tell({ seed: from + count, isDone: true });
process.disconnect();
