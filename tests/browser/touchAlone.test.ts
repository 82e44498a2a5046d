import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { screens } from '#tests/support/browser.ts';
import { type Finger, fingerOn } from '#tests/support/finger.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { atRest, onScreen, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

/** mm: where shelf 1 of the demo stands, and one with a must that takes many words; a free place of its floor */
const SHELF = { x: 5600, y: 6250 };
const DRESSING = { x: 4100, y: 7400 };
const FLOOR = { x: 3300, y: 4700 };

// No mouse is moved and no key is pressed, but to write in a field that was tapped.
describe.each(screens('phone', 'tablet'))('by touch alone, on a %s', (size) => {
  const shared = onePage(async () => {
    const page = await pageOf(served.browser, 'MK', size);
    await openDemo(page, served.server);
    return page;
  });
  let page: Page;
  let finger: Finger;
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
  const leaveDialog = async (): Promise<void> => {
    await finger.tap(page.getByRole('dialog').getByRole('button', { name: /^Back to the sheet/ }));
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  };
  const said = (words: string | RegExp) => page.locator('.said').getByText(words).first().waitFor();
  const takeBack = async (): Promise<void> => {
    await finger.tap(button('Take back'));
    await said(/^Taken back/);
  };
  /** On a phone one part is shown at a time. */
  const turnTo = async (part: RegExp): Promise<void> => {
    const swap = page.locator('.swap').getByRole('button', { name: part });
    if ((await swap.count()) > 0 && (await swap.getAttribute('aria-pressed')) === 'false') await finger.tap(swap);
  };
  const toSheet = async (name: RegExp): Promise<void> => {
    await finger.tap(page.getByRole('tab', { name }));
    // The sheet fills a tablet's screen: a finger cannot slide it away to where there is nothing.
    if (size === 'tablet') expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
  };
  const chooseShelf = async (): Promise<void> => {
    await turnTo(/^Drawing/);
    if ((await button('Put away').count()) === 0) await finger.tapAt(await onScreen(page, SHELF));
    await button('Put away').waitFor();
  };
  beforeEach(async () => {
    page = await shared();
    finger = await fingerOn(page);
  }, 120_000);

  it('a guide chooses a shelf, slides it, turns it and puts it away, and takes each back', async () => {
    await toSheet(/Room/);
    await chooseShelf();
    const from = await onScreen(page, SHELF);
    await finger.slide(from, { x: from.x - 40, y: from.y - 30 });
    await said(/^Shelf 1, practical life, E5 to E7/);
    await finger.tap(button('Turn 15°'));
    await takeBack();
    await takeBack();
    await finger.tap(button('Put away'));
    await said('10 trays are on the table');
    await takeBack();
  });

  it('measures with the tape, sets down a table, writes a remark, comes nearer', async () => {
    await finger.tap(button('Tape'));
    await finger.tapAt(await onScreen(page, { x: 3000, y: 3000 }));
    await finger.tapAt(await onScreen(page, FLOOR));
    await said(/^Tape: /);
    if (size === 'tablet') {
      // Its answer keeps within the sheet, beside who is here.
      const [words, here, sheet] = await Promise.all(
        ['.draft-line', '.short-state', '.room-sheet'].map((part) => page.locator(part).first().boundingBox()),
      );
      if (!words || !here || !sheet) throw new Error('the strip is not drawn');
      expect(words.x + words.width).toBeLessThanOrEqual(here.x);
      expect(words.y + words.height).toBeLessThanOrEqual(sheet.y + sheet.height + 1);
    }
    await finger.tap(button('Tape'));
    await finger.tap(button('Draw'));
    await finger.tap(page.getByRole('menuitem', { name: 'Table', exact: true }));
    await finger.tapAt(await onScreen(page, FLOOR));
    await said(/^Table T6 is set down/);
    await takeBack();
    await finger.tap(button('Remark'));
    await finger.tapAt(await onScreen(page, FLOOR));
    await finger.tap(page.getByRole('textbox', { name: 'Remark' }));
    await page.keyboard.type('Keep this free');
    await finger.tap(button('Put it there'));
    await said('The remark is on the sheet.');
    const scale = async () => Number((await page.locator('.plan-paper').getAttribute('data-view'))?.split(' ')[0]);
    const before = await scale();
    await finger.spread(await onScreen(page, FLOOR), 40, 80);
    expect((await scale()) / before).toBeCloseTo(2, 1);
    await finger.tap(button('Whole room'));
  });

  it('has a check mended and takes that back, reads why it is asked', async () => {
    await turnTo(/^Checks/);
    const withFix = page.locator('.finding').filter({ has: page.getByRole('button', { name: /^Do it/ }) });
    await finger.tap(withFix.locator('.finding-head'));
    await finger.tap(page.locator('.finding.shown').getByRole('button', { name: /^Do it/ }));
    await said('Take back undoes it');
    await takeBack();
    if ((await page.locator('.finding.shown').count()) === 0) await finger.tap(page.locator('.finding-head'));
    await finger.tap(page.locator('.finding.shown').getByRole('button', { name: /^Why/ }));
    await leaveDialog();
  });

  it('finds its place in the checks again after the drawing', async () => {
    await turnTo(/^Checks/);
    const shown = page.locator('.finding.shown');
    if ((await shown.count()) > 0) await finger.tap(shown.locator('.finding-head'));
    const last = page.locator('.finding-head').last();
    // What lies above it takes its true height only once it is near.
    for (let k = 0; k < 3; k++) {
      await last.evaluate((node) => node.scrollIntoView({ block: 'center' }));
      await atRest(page);
    }
    await finger.tap(last);
    await shown.waitFor();
    const name = await shown.locator('.finding-text').textContent();
    await turnTo(size === 'phone' ? /^Drawing/ : /^Shelves/);
    await shown.waitFor({ state: 'detached' });
    await turnTo(/^Checks/);
    await expect.poll(() => shown.locator('.finding-text').textContent()).toBe(name);
    const seen = (): Promise<boolean> =>
      shown.evaluate((node) => {
        const { top } = node.getBoundingClientRect();
        return top >= 0 && top < innerHeight - 80;
      });
    await expect.poll(seen).toBe(true);
  });

  it('opens the front and drags a tray to another board, which stays under the finger', async () => {
    // Whichever the check before was about.
    await turnTo(/^Drawing/);
    await finger.tapAt(await onScreen(page, SHELF));
    await finger.tap(button('See its front'));
    const drawing = page.locator('.front-drawing canvas').first();
    await drawing.waitFor();
    await drawing.evaluate((node) => node.scrollIntoView({ block: 'center' }));
    await atRest(page);
    const box = await drawing.boundingBox();
    if (!box) throw new Error('the front is not drawn');
    // The first tray of the top board, and the free part of the low one.
    // While it is in hand each of the other shelves is there to let go on.
    const places = page.evaluate(
      () =>
        new Promise<readonly [count: number, missed: readonly string[]]>((done) => {
          function look(): void {
            const all = [...document.querySelectorAll('.front-drop')];
            if (all.length === 0) return void requestAnimationFrame(look);
            const missed = all.filter((one) => {
              const { left, top, width, height } = one.getBoundingClientRect();
              return width < 44 || height < 44 || document.elementFromPoint(left + width / 2, top + height / 2) !== one;
            });
            done([all.length, missed.map(({ textContent }) => textContent)]);
          }
          look();
        }),
    );
    await finger.slide({ x: box.x + 85, y: box.y + 23 }, { x: box.x + box.width * 0.7, y: box.y + 0.665 * box.height });
    expect(await places).toEqual([15, []]);
    await said(/^Carrying a tray: shelf 1, low board, 1\.0/);
    if (size === 'tablet') {
      // Its verbs are in sight with nothing scrolled, and leave the boards in sight.
      await page.locator('.tray-verbs').waitFor();
      const [verbs, underVerbs] = await page.evaluate(() => {
        const met = (one: Element) => {
          const { left, top, width, height } = one.getBoundingClientRect();
          return one.contains(document.elementFromPoint(left + width / 2, top + height / 2));
        };
        const boards = document.querySelector('.front-drawing canvas')?.getBoundingClientRect().bottom ?? 0;
        const own = document.querySelector('.tray-verbs')?.getBoundingClientRect().top ?? 0;
        return [[...document.querySelectorAll('.tray-verbs .verbs button')].map(met), boards - own];
      });
      expect(verbs.length).toBeGreaterThanOrEqual(4);
      expect(verbs).not.toContain(false);
      // The names of the lowest board lie at the foot of the drawing.
      expect(underVerbs).toBeLessThan(30);
    }
    await takeBack();
  });

  it('reads beside the verbs of a tray why it is out of step, and sees that there is more', async () => {
    await turnTo(/front$/i);
    await finger.tap(button('Another front'));
    await finger.tap(page.getByRole('menuitem', { name: /^Shelf 6/ }));
    const plan = () => page.locator('.plan-paper').boundingBox();
    const before = size === 'tablet' ? await plan() : null;
    await finger.tap(page.getByRole('button', { name: 'Rough and smooth board (two halves)', exact: true }));
    await page.locator('.tray-verbs .tray-finding').first().waitFor();
    await atRest(page);
    const seen = await page.evaluate(() => {
      const met = (one: Element, x: number, y: number) => one.contains(document.elementFromPoint(x, y));
      const buttons = [...document.querySelectorAll('.tray-verbs .verbs button')].map((one) => one.getBoundingClientRect());
      const box = document.querySelector('.tray-verbs');
      const why = document.querySelector('.tray-finding');
      const at = why?.getBoundingClientRect();
      if (!box || !why || !at) return null;
      return {
        verbs: buttons.length,
        hidden: buttons.filter(({ x, y, width, height }) => !met(box, x + width / 2, y + height / 2)).length,
        firstLine: met(why, at.x + 40, at.y + 10),
        hasMore: box.scrollHeight > box.clientHeight + 1,
        shade: getComputedStyle(box).backgroundAttachment,
        ofPage: document.documentElement.scrollWidth - innerWidth,
      };
    });
    expect(seen).toEqual({ verbs: 5, hidden: 0, firstLine: true, hasMore: true, shade: 'local, scroll, scroll', ofPage: 0 });
    // The plan keeps its scale beside it.
    if (size === 'tablet') expect(await plan()).toEqual(before);
  });

  it('gives a material its place where it fits, and takes that back', async () => {
    await toSheet(/Materials/);
    await finger.tap(button('Washing dishes'));
    await turnTo(/^Where would it fit/);
    await finger.tap(button('Put it here'));
    await said(/^Washing dishes: Shelf \d+, /);
    await takeBack();
  });

  it('a director changes how many children there are, in the settings of the class', async () => {
    await toSheet(/Places/);
    await page.locator('.places-top').getByText('24 are enrolled').waitFor();
    await finger.tap(button(/^The class/));
    await finger.tap(page.getByRole('dialog').getByRole('textbox', { name: 'Children', exact: true }));
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('3');
    await leaveDialog();
    await page.locator('.places-top').getByText('19 are enrolled').waitFor();
    await takeBack();
  });

  it('a team ticks a step of the move, saves the file, and sees what would be printed', async () => {
    await toSheet(/Move day/);
    await finger.tap(page.locator('.step-tick'));
    await expect.poll(() => page.getByRole('checkbox', { name: /^Step 1 done/ }).isChecked()).toBe(true);
    await finger.tap(button('File'));
    const saved = page.waitForEvent('download');
    await finger.tap(page.getByRole('menuitem', { name: 'Save a file' }));
    expect((await saved).suggestedFilename()).toMatch(/\.lowshelf\.json$/);
    await finger.tap(button('File'));
    await finger.tap(page.getByRole('menuitem', { name: /^Print/ }));
    await expect.poll(() => page.getByRole('checkbox', { name: 'Move day: plan, steps, crates' }).isChecked()).toBe(true);
    expect(await page.locator('.print-page').count()).toBeGreaterThan(1);
    await leaveDialog();
  });

  it('what is said of a shelf covers few lines of the sheet, however much is wrong with it', async () => {
    await toSheet(/Room/);
    await turnTo(/^Drawing/);
    await finger.tapAt(await onScreen(page, DRESSING));
    await said(/^Shelf 2, .* Must, at /);
    const covered = await page
      .locator('.said')
      .evaluate((node) => node.clientHeight / Number.parseFloat(getComputedStyle(node).lineHeight));
    expect(covered).toBeGreaterThan(1.5);
    expect(covered).toBeLessThan(size === 'phone' ? 3.5 : 2.5);
  });
});
