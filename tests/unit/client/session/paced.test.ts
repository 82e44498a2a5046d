import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { pacedOf } from '#client/session/paced.ts';
import type { Session } from '#client/session/types.ts';
import { finding, report } from '../checks/finding.ts';

beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => vi.useRealTimers());

/** A session of which only the report and the thing in hand change. */
function scripted() {
  const listeners = new Set<() => void>();
  let [said, isMoving] = [report([]), false];
  const session = {
    report: () => said,
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
    move(now: boolean) {
      isMoving = now;
      tell();
    },
    hears: () => listeners.size,
  };
}

it('words follow each report at rest, and in steps while something is dragged', () => {
  const { session, say, move, hears } = scripted();
  const paced = pacedOf(session);
  const keyNow = (): string | undefined => paced.report()?.findings[0]?.key;
  let told = 0;
  const stop = paced.subscribe(() => told++);
  say('a');
  expect(keyNow()).toBe('a');
  say('b');
  expect(keyNow()).toBe('b');
  move(true);
  expect(keyNow()).toBe('b');
  vi.advanceTimersByTime(500);
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
  vi.advanceTimersByTime(300);
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
