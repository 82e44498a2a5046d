import { gzipSync } from 'node:zlib';
import { openBrowser, openPerson, startServer } from '#tests/support/browser.ts';

export interface FirstLoad {
  /** Gzipped bytes of page, scripts and styles that came before the plan was drawn, and in all on the first Room sheet. */
  readonly untilDrawn: number;
  readonly inAll: number;
  /** The checks' own file, fetched beside them. */
  readonly worker: number;
  /** The demo room's data, part of the first two. */
  readonly demo: number;
}

/** What a fresh browser fetches at the bare address, measured on the served build. */
export async function firstLoadBytes(): Promise<FirstLoad> {
  const server = await startServer();
  const browser = await openBrowser();
  try {
    const page = await (await openPerson(browser, 'wide', true)).newPage();
    const bodies = new Map<string, Promise<number>>();
    const beforeDrawn = new Set<string>();
    let isDrawn = false;
    page.on('response', (response) => {
      const path = new URL(response.url()).pathname;
      if (!/(\/|\.js|\.css)$/.test(path) || /\/(sw|workbox-[\w-]+)\.js$/.test(path) || bodies.has(path)) return;
      if (!isDrawn) beforeDrawn.add(path);
      bodies.set(
        path,
        response.body().then(
          (body) => gzipSync(body, { level: 9 }).length,
          () => 0,
        ),
      );
    });
    await page.goto(server.address);
    await page.waitForFunction(() => performance.getEntriesByName('plan-drawn').length > 0, undefined, { timeout: 20_000 });
    isDrawn = true;
    // The service worker fetches everything later on; only what the sheet itself asks for counts.
    await page.waitForTimeout(1000);
    const sizes = await Promise.all([...bodies].map(async ([path, bytes]) => ({ path, bytes: await bytes })));
    const sum = (pick: (path: string) => boolean): number => sizes.reduce((total, { path, bytes }) => total + (pick(path) ? bytes : 0), 0);
    const isWorker = (path: string): boolean => /\/worker-/.test(path);
    return {
      untilDrawn: sum((path) => beforeDrawn.has(path) && !isWorker(path)),
      inAll: sum((path) => !isWorker(path)),
      worker: sum(isWorker),
      demo: sum((path) => /demo-room/.test(path)),
    };
  } finally {
    await browser.close();
    await server.stop();
  }
}
