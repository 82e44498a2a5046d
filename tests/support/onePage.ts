import type { Page } from 'playwright-core';
import { afterAll, afterEach } from 'vitest';

/**
 * One page for the tests of a `describe` or of a file: to open the demo takes longer than most of what is asked of it.
 * Each test leaves it as it found it, or says what it leaves. After a test that failed the next has a fresh one, so each fails for its own reason.
 * @returns what gives the page; the first test that asks opens it
 */
export function onePage(open: () => Promise<Page>): () => Promise<Page> {
  let page: Promise<Page> | null = null;
  const close = async (): Promise<void> => {
    const was = await page?.catch(() => null);
    page = null;
    await was?.context().close();
  };
  afterEach(({ task }) => (task.result?.state === 'fail' ? close() : undefined));
  afterAll(close);
  return () => {
    page ??= open();
    return page;
  };
}
