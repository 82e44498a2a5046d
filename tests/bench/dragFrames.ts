import { resolve } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { openBrowser, type RunningServer, startServer } from '#tests/support/browser.ts';
import { checked, onScreen, openDemo, pageOf } from '#tests/support/sheetPage.ts';
import { percentiles, type Times } from './percentiles.ts';

/** What the page does while a hand drags a shelf to and fro. */
export interface DragFrames {
  /** ms of main-thread work between one frame and the next */
  readonly work: Times;
  /** ms of the longest task on the main thread */
  readonly longest: number;
  /** Share of frames that came more than half a frame late, 0 to 1. */
  readonly late: number;
  /** Bytes on the page's heap after the collector, at the start of the drag and at its end. */
  readonly heap: readonly [number, number];
}

/** ms between two places of the hand */
const PACE = 16;
/** Frames of dragging before those that are measured, after which the engine has translated what it will. */
const WARM_UP = 120;
// As text: the loader that runs our scripts wraps functions in what a page does not know.
const DRAW_NOTHING = `{
  const pen = document.querySelector('canvas').getContext('2d');
  const draw = () => { pen.clearRect(0, 0, 1000, 700); requestAnimationFrame(draw); };
  draw();
}`;
const MARK_FRAMES = `{
  const frames = (globalThis.frames = []);
  const mark = (at) => { frames.push(at); performance.mark('frame'); requestAnimationFrame(mark); };
  requestAnimationFrame(mark);
}`;
/** mm: where a shelf stands in either room */
const SHELF_OF_DEMO = { x: 5600, y: 6250 };
const SHELF_OF_400 = { x: 1560, y: 27_835 };
/** ms of a frame of 60 in a second, and half more */
const LATE = 25;

/** Drags a shelf in the demo and in the room of 400 pieces, and moves over an empty canvas in the same way; `seconds` each. */
export async function dragFrames(seconds: number): Promise<{ empty: DragFrames; demo: DragFrames; large: DragFrames }> {
  const server = await startServer();
  const browser = await openBrowser();
  try {
    return {
      empty: await overEmptyCanvas(browser, server, seconds),
      demo: await inRoom(browser, server, seconds, SHELF_OF_DEMO),
      large: await inRoom(browser, server, seconds, SHELF_OF_400, openLarge),
    };
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function openLarge(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Open a file' }).click();
  await page.locator('input[type=file]').setInputFiles(resolve('tests/bench/rooms/bench-400.json'));
  await page.getByRole('heading', { level: 1, name: /400/ }).waitFor();
  await checked(page);
}

async function overEmptyCanvas(browser: Browser, server: RunningServer, seconds: number): Promise<DragFrames> {
  const page = await pageOf(browser, 'MK');
  // A page of the server's own that draws nothing: what a frame costs before anything of ours.
  await page.goto(`${server.address}/health`);
  await page.setContent('<canvas width="1000" height="700"></canvas>');
  await page.evaluate(DRAW_NOTHING);
  return measured(page, { x: 300, y: 300 }, { x: 500, y: 300 }, seconds);
}

async function inRoom(
  browser: Browser,
  server: RunningServer,
  seconds: number,
  shelf: Point,
  open?: (page: Page) => Promise<void>,
): Promise<DragFrames> {
  const page = await pageOf(browser, 'MK');
  await openDemo(page, server);
  await open?.(page);
  const from = await onScreen(page, shelf);
  return measured(page, from, { x: from.x - 60, y: from.y - 40 }, seconds);
}

async function measured(page: Page, from: Point, to: Point, seconds: number): Promise<DragFrames> {
  const cdp = await page.context().newCDPSession(page);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await drag(page, from, to, WARM_UP);
  const before = await heapOf(cdp);
  await page.evaluate(MARK_FRAMES);
  await page
    .context()
    .browser()
    ?.startTracing(page, { categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'toplevel', 'blink.user_timing'] });
  await drag(page, from, to, (seconds * 1000) / PACE);
  const trace = JSON.parse(String(await page.context().browser()?.stopTracing())) as { traceEvents: TraceEvent[] };
  const frames = (await page.evaluate('globalThis.frames')) as number[];
  await page.mouse.up();
  const after = await heapOf(cdp);
  await page.context().close();
  const gaps = frames.slice(1).map((at, i) => at - (frames[i] as number));
  return { ...workOf(trace.traceEvents), late: gaps.filter((gap) => gap > LATE).length / Math.max(1, gaps.length), heap: [before, after] };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** To and fro, one place a frame, as fast as a hand and no faster than the page answers. */
async function drag(page: Page, from: Point, to: Point, frames: number): Promise<void> {
  let next = performance.now();
  for (let i = 0; i < frames; i++) {
    const t = 0.5 - 0.5 * Math.cos((i / 60) * Math.PI);
    await page.mouse.move(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
    next += PACE;
    const rest = next - performance.now();
    if (rest > 0) await new Promise((done) => setTimeout(done, rest));
    else next = performance.now();
  }
}

async function heapOf(cdp: CDPSession): Promise<number> {
  await cdp.send('HeapProfiler.collectGarbage');
  return (await cdp.send('Runtime.getHeapUsage')).usedSize;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly tdur?: number;
  readonly dur?: number;
  readonly pid: number;
  readonly tid: number;
}

/** Tasks of the page's main thread between the marks of its frames. Thread time where it is known: others' work does not count. */
function workOf(events: readonly TraceEvent[]): Pick<DragFrames, 'work' | 'longest'> {
  const marks = events.filter(({ name }) => name === 'frame').sort((p, q) => p.ts - q.ts);
  const [first] = marks;
  if (!first) throw new Error('the trace has no frames');
  const tasks = events
    .filter(({ name, pid, tid }) => name === 'RunTask' && pid === first.pid && tid === first.tid)
    .map(({ ts, tdur, dur }) => ({ ts, ms: (tdur ?? dur ?? 0) / 1000 }))
    .sort((p, q) => p.ts - q.ts);
  const work = marks.slice(1).map(() => 0);
  let k = 0;
  let longest = 0;
  for (const { ts, ms } of tasks) {
    if (ts < first.ts) continue;
    longest = Math.max(longest, ms);
    while (k + 1 < marks.length && (marks[k + 1] as TraceEvent).ts <= ts) k++;
    if (k < work.length) work[k] = (work[k] as number) + ms;
  }
  return { work: percentiles(work), longest };
}
