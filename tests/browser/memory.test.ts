import { readFileSync } from 'node:fs';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '#tests/support/runs.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, onScreen, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

/** Slides, each of about a second: five minutes of them in `npm run proof`. */
const SLIDES = runs(2, 300);
/** Slides before the first look, after which what is made once has been made. */
const FIRST = runs(1, 30);
/** Of what the workers have there is no other measure; some seconds of dragging are too short to tell what the engine keeps for its own work. */
const MOST_RESIDENT = runs(1.6, 1.25);
/** mm: where a shelf of the demo stands */
const SHELF = { x: 5600, y: 6250 };
/** px from there */
const FAR = { x: -60, y: -40 };
/** Steps of one slide, as a hand makes them in about a second. */
const STEPS = runs(10, 30);
/** Bytes of code that the engine makes of what runs often: 1.4 MB after ten slides in a heap snapshot, 1.6 or so after 24. */
const WARMING_UP = 2.5 * 2 ** 20;
/** Bytes of marks that a slide leaves in the shared document, where each write is kept as a step: 9 kB in that snapshot. */
const WRITTEN = 12_000;
/** Nodes of the words that were shown before those that are: kept until the next come. 102 after two slides as after 25. */
const LAST_WORDS = 150;

interface Memory {
  /** Bytes of the page's own things after the collector. */
  readonly heap: number;
  /** Bytes that the page and its workers take of the machine. */
  readonly resident: number;
  readonly nodes: number;
  readonly listeners: number;
}

async function memoryOf(browser: Browser, cdp: CDPSession): Promise<Memory> {
  await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize } = await cdp.send('Runtime.getHeapUsage');
  const { nodes, jsEventListeners: listeners } = await cdp.send('Memory.getDOMCounters');
  const whole = await browser.newBrowserCDPSession();
  const { processInfo } = await whole.send('SystemInfo.getProcessInfo');
  await whole.detach();
  const pids = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
  const resident = pids.reduce(
    (sum, pid) => sum + Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) * 1024,
    0,
  );
  return { heap: usedSize, resident, nodes, listeners };
}

/** Slides the shelf away and back, lets it go, and takes that back: again and again. */
async function slide(page: Page, times: number): Promise<void> {
  const from = await onScreen(page, SHELF);
  for (let k = 0; k < times; k++) {
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (let step = 1; step <= STEPS; step++) {
      const share = Math.sin((step / STEPS) * Math.PI * 0.9);
      await page.mouse.move(from.x + FAR.x * share, from.y + FAR.y * share);
      await page.waitForTimeout(10);
    }
    await page.mouse.up();
    await page.keyboard.press('ControlOrMeta+z');
  }
  // A shelf was slid, and that was taken back.
  await expect.poll(() => page.getByRole('button', { name: 'Do again' }).isEnabled()).toBe(true);
}

describe('a tablet on which shelves are slid to and fro', () => {
  it('takes no more memory in the end than at the start', { timeout: patience }, async () => {
    const page = await pageOf(served.browser, 'MK');
    await openDemo(page, served.server);
    const cdp = await page.context().newCDPSession(page);
    await slide(page, FIRST);
    await checked(page);
    const before = await memoryOf(served.browser, cdp);
    await slide(page, SLIDES);
    await checked(page);
    const after = await memoryOf(served.browser, cdp);
    const said = JSON.stringify({ before, after });
    expect(after.heap - before.heap, said).toBeLessThan(WARMING_UP + SLIDES * WRITTEN);
    expect(after.resident / before.resident, said).toBeLessThan(MOST_RESIDENT);
    expect(after.nodes, said).toBeLessThan(before.nodes + LAST_WORDS);
    expect(after.listeners, said).toBeLessThan(before.listeners + 20);
    await page.context().close();
  });
});
