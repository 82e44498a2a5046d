// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

type Module = typeof import('#client/session/whenQuiet.ts');

/** A page of its own: what waits is kept by the module. */
let page: Module;
/** ms after the page began at which its plan stood; null: not yet */
let drawnAt: number | null;
const came: string[] = [];
const fetch = (name: string): void => page.fetchWhenQuiet(async () => void came.push(name));

beforeEach(async () => {
  vi.useFakeTimers({ now: 0, toFake: ['setTimeout', 'performance'] });
  vi.resetModules();
  page = await import('#client/session/whenQuiet.ts');
  came.length = 0;
  drawnAt = null;
  performance.getEntriesByName = () => (drawnAt === null ? [] : [{ startTime: drawnAt } as PerformanceEntry]);
});
afterEach(() => {
  vi.useRealTimers();
});

describe('what is fetched when the page is quiet', () => {
  it('waits four seconds from when the drawing stands, then comes one after the other', async () => {
    fetch('first');
    fetch('second');
    await vi.advanceTimersByTimeAsync(2900);
    drawnAt = 2900;
    await vi.advanceTimersByTimeAsync(3900);
    expect(came).toEqual([]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(came).toEqual(['first', 'second']);
  });

  it('comes also where no plan is drawn, so that the start page is kept for the time without a server', async () => {
    fetch('first');
    await vi.advanceTimersByTimeAsync(11_000);
    expect(came).toEqual([]);
    await vi.advanceTimersByTimeAsync(1100);
    expect(came).toEqual(['first']);
  });

  it('asks again, now and then, for what could not be fetched, and takes what is asked for later', async () => {
    drawnAt = 0;
    let isAway = true;
    page.fetchWhenQuiet(async () => {
      came.push(isAway ? 'away' : 'back');
      if (isAway) throw new TypeError('Failed to fetch');
    });
    fetch('there');
    await vi.advanceTimersByTimeAsync(5000);
    expect(came).toEqual(['away']);
    await vi.advanceTimersByTimeAsync(12_000);
    expect(came).toEqual(['away', 'there', 'away']);
    isAway = false;
    fetch('later');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(came).toEqual(['away', 'there', 'away', 'back', 'later']);
  });
});
