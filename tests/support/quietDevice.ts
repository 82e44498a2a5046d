import type { Analyst } from '#client/session/analyst.ts';

/** An analyst that is never done, for tests that ask nothing of the checks. */
export const silentAnalyst: Analyst = {
  ask: () => undefined,
  knowMats: () => undefined,
  report: () => null,
  trouble: () => null,
  isThinking: () => false,
  subscribe: () => () => undefined,
  close: () => undefined,
};

/** What localStorage is for the page, empty. */
export function smallStore() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
}
