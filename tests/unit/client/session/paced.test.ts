import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { pacedKept, pacedReport } from '#client/session/paced.ts';
import type { Kept, Session } from '#client/session/types.ts';
import { finding, report } from '../checks/finding.ts';

beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => vi.useRealTimers());

/** A session of which only the report and the thing in hand change. */
function scripted() {
  const listeners = new Set<() => void>();
  let [said, isMoving] = [report([]), false];
  let kept: Kept = { here: 'kept', server: 'saved', waiting: 0, trouble: null };
  const session = {
    report: () => said,
    kept: () => kept,
    view: () => ({ preview: isMoving ? { piece: 's1' } : null, draft: null }),
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  const tell = (): void => {
    for (const listener of listeners) listener();
  };
  return {
    session: session as unknown as Session,
    say(key: string) {
      said = report([finding({ key })]);
      tell();
    },
    keep(now: Partial<Kept>) {
      kept = { ...kept, ...now };
      tell();
    },
    move(now: boolean) {
      isMoving = now;
      tell();
    },
    hears: () => listeners.size,
  };
}

it('words follow each report at rest, and in steps while something is dragged', () => {
  const { session, say, move, hears } = scripted();
  const paced = pacedReport(session);
  const keyNow = (): string | undefined => paced.value()?.findings[0]?.key;
  let told = 0;
  const stop = paced.subscribe(() => told++);
  say('a');
  expect(keyNow()).toBe('a');
  say('b');
  expect(keyNow()).toBe('b');
  move(true);
  expect(keyNow()).toBe('b');
  vi.advanceTimersByTime(900);
  told = 0;
  // The first of a drag at once, then the latest of what came in between.
  say('c');
  expect(keyNow()).toBe('c');
  vi.advanceTimersByTime(50);
  say('d');
  vi.advanceTimersByTime(50);
  say('e');
  expect(keyNow()).toBe('c');
  expect(told).toBe(1);
  vi.advanceTimersByTime(800);
  expect(keyNow()).toBe('e');
  expect(told).toBe(2);
  // Let go: nothing waits.
  say('f');
  expect(keyNow()).toBe('e');
  move(false);
  expect(keyNow()).toBe('f');
  vi.advanceTimersByTime(1000);
  expect(keyNow()).toBe('f');
  stop();
  expect(hears()).toBe(0);
});

it('all that is shown in steps changes at the same moment', () => {
  const { session, say, move } = scripted();
  const [words, marks] = [pacedReport(session), pacedReport({ ...session, report: session.report })];
  const changed = { words: [] as number[], marks: [] as number[] };
  words.subscribe(() => changed.words.push(performance.now()));
  move(true);
  say('a');
  vi.advanceTimersByTime(130);
  marks.subscribe(() => changed.marks.push(performance.now()));
  for (let step = 0; step < 80; step++) {
    say(String(step));
    vi.advanceTimersByTime(50);
  }
  const later = changed.words.slice(2);
  expect(later.length).toBeGreaterThan(2);
  expect(changed.marks).toEqual(expect.arrayContaining(later));
});

it('where the work is kept is told calmly: what is not well at once, that all is well once it stays so', () => {
  const { session, keep } = scripted();
  const paced = pacedKept(session);
  let told = 0;
  paced.subscribe(() => told++);
  keep({ here: 'keeping' });
  expect(paced.value().here).toBe('keeping');
  // A drag: kept and not kept many times a second.
  for (let step = 1; step <= 40; step++) {
    keep({ here: 'kept', server: 'saving', waiting: step });
    keep({ here: 'kept', server: 'saved', waiting: 0 });
    vi.advanceTimersByTime(25);
    keep({ here: 'keeping' });
    vi.advanceTimersByTime(25);
    expect(paced.value()).not.toMatchObject({ here: 'kept', server: 'saved' });
  }
  expect(told).toBeLessThan(10);
  keep({ here: 'failed', trouble: 'the disk is full' });
  expect(paced.value().here).toBe('failed');
  keep({ here: 'kept', server: 'saved', waiting: 0, trouble: null });
  vi.advanceTimersByTime(399);
  expect(paced.value().here).toBe('failed');
  vi.advanceTimersByTime(1);
  expect(paced.value()).toMatchObject({ here: 'kept', server: 'saved' });
});
