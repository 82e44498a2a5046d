import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { openBrowser, type RunningServer, startServer } from './browser.ts';
import { builtPage } from './builtPage.ts';

/** Builds the page once, serves it, and opens a browser for the tests of a file; both are closed after them. */
export function servedPages(): { readonly server: RunningServer; readonly browser: Browser } {
  let server: RunningServer | null = null;
  let browser: Browser | null = null;
  beforeAll(async () => {
    await builtPage();
    server = await startServer();
    browser = await openBrowser();
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });
  return {
    get server() {
      if (!server) throw new Error('the server runs once the tests have begun');
      return server;
    },
    get browser() {
      if (!browser) throw new Error('the browser opens once the tests have begun');
      return browser;
    },
  };
}
