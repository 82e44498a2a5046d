import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { openBrowser, type ServedAt, shortLived } from './browser.ts';
import { builtPage } from './builtPage.ts';
import { startServer } from './server/startServer.ts';

interface Served {
  readonly server: ServedAt;
  readonly browser: Browser;
}

/** One server and one browser for all files that a worker of the test runner asks: both end with it, so the server is in its process. */
let running: Promise<Served> | null = null;

async function run(): Promise<Served> {
  const pages = await builtPage();
  const [{ http }, browser] = await Promise.all([startServer({ pages }), openBrowser(shortLived)]);
  return { server: { address: http }, browser };
}

/** Builds the page once, serves it, and opens a browser; whoever opened it in a file is gone after the file. */
export function servedPages(): Served {
  let served: Served | null = null;
  const ready = (): Served => {
    if (!served) throw new Error('the server and the browser run once the tests have begun');
    return served;
  };
  beforeAll(async () => {
    running ??= run();
    served = await running;
  }, 180_000);
  afterAll(async () => {
    for (const person of served?.browser.contexts() ?? []) await person.close();
  });
  return {
    get server() {
      return ready().server;
    },
    get browser() {
      return ready().browser;
    },
  };
}
