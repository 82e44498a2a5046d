import type { CDPSession, Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** px: WCAG 2.2, success criterion 2.5.5 Target Size (Enhanced) */
const TARGET = 44;
/** Touches of one slide, as a hand makes them. */
const STEPS = 10;

interface At {
  readonly x: number;
  readonly y: number;
}

/** One or two fingers on a page, and nothing else. */
export interface Finger {
  /** Presses the first of these, in its middle. It has to be 44 px each way, with nothing lying over it. */
  tap(target: Locator): Promise<void>;
  /** Presses a place on the screen (px). */
  tapAt(at: At): Promise<void>;
  /** Slides from one place on the screen to another (px). */
  slide(from: At, to: At): Promise<void>;
  /** Two fingers beside one another, `from` px off the middle, until they are `to` px off it. */
  spread(middle: At, from: number, to: number): Promise<void>;
}

export async function fingerOn(page: Page): Promise<Finger> {
  const devTools = await page.context().newCDPSession(page);
  return {
    async tap(target) {
      const one = target.first();
      await one.waitFor();
      // As far as a finger scrolls to it.
      await one.evaluate((node) => node.scrollIntoView({ block: 'center' }));
      const { at, missed } = await one.evaluate(reach, TARGET);
      expect(missed, `${target} is caught`).toEqual([]);
      await page.touchscreen.tap(at.x, at.y);
      await drawn(page);
    },
    async tapAt({ x, y }) {
      await page.touchscreen.tap(x, y);
      await drawn(page);
    },
    slide: (from, to) => move(devTools, page, (share) => [between(from, to, share)]),
    spread: (middle, from, to) =>
      move(devTools, page, (share) => {
        const off = from + (to - from) * share;
        return [
          { x: middle.x - off, y: middle.y },
          { x: middle.x + off, y: middle.y },
        ];
      }),
  };
}

/** What was just touched is drawn. */
const drawn = (page: Page): Promise<number> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

const between = (p: At, q: At, share: number): At => ({ x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share });

async function move(devTools: CDPSession, page: Page, at: (share: number) => At[]): Promise<void> {
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: At[]) =>
    devTools.send('Input.dispatchTouchEvent', { type, touchPoints: points.map((point, id) => ({ ...point, id })) });
  await send('touchStart', at(0));
  for (let step = 1; step <= STEPS; step++) {
    await send('touchMove', at(step / STEPS));
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
  await send('touchEnd', []);
  await drawn(page);
}

/** In the page: the middle of a target, and what is met in its stead there and at the ends of its 44 px. */
function reach(node: HTMLElement | SVGElement, target: number): { at: At; missed: string[] } {
  const box = node.getBoundingClientRect();
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const half = target / 2 - 1;
  const points = [
    [0, 0],
    [-half, 0],
    [half, 0],
    [0, -half],
    [0, half],
  ] as const;
  const missed = points.flatMap(([x, y]) => {
    const met = document.elementFromPoint(at.x + x, at.y + y);
    // A press on the words beside a box to tick ticks it.
    const isIt = met !== null && (node.contains(met) || met.closest('label')?.contains(node));
    return isIt ? [] : [`${x}, ${y}: ${met?.tagName} ${met?.className} “${met?.textContent?.slice(0, 30)}”`];
  });
  return { at, missed };
}
