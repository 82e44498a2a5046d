import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { screens } from '#tests/support/browser.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

/** What has focus: the part of the column, and its words. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    const entry = at?.closest('.finding');
    return { tag: at?.tagName ?? '', className: at?.className ?? '', id: at?.id ?? '', words: (entry ?? at)?.textContent ?? '' };
  });

const press = async (page: Page, name: string, within = '.finding.shown'): Promise<void> => {
  await page.locator(within).getByRole('button', { name, exact: false }).first().focus();
  await page.keyboard.press('Enter');
};

describe('focus in the checks, by keyboard', () => {
  it.each(screens('wide', 'tablet', 'phone'))(
    'goes on to the next finding when one is done, left or taken up again, on a %s screen',
    async (size) => {
      const page = await pageOf(served.browser, 'MK', size);
      await openDemo(page, served.server);
      if (size === 'phone') await page.getByRole('button', { name: /^Checks/ }).click();
      const withFix = page.locator('.finding').filter({ has: page.getByRole('button', { name: /^Do it/ }) });
      const head = withFix.locator('.finding-head').first();
      const done = (await head.locator('.finding-text').textContent()) ?? '';
      await head.focus();
      await page.keyboard.press('Enter');
      await press(page, 'Do it');
      await expect.poll(async () => (await focused(page)).tag).toBe('BUTTON');
      await page.locator('.said').getByText('Take back undoes it').waitFor();
      // On no screen do the words lie on where the work is kept, nor, but for the lines beyond those there is room for, on the sheet.
      const { said, room, kept } = await page.evaluate(() => {
        const place = (part: string) => document.querySelector(part)?.getBoundingClientRect();
        const below = Number.parseFloat(getComputedStyle(document.documentElement).getPropertyValue('--below'));
        return { said: place('.said'), room: innerHeight - below, kept: place('.kept-line svg')?.top ?? innerHeight };
      });
      expect(said?.bottom).toBeLessThanOrEqual(kept);
      expect(said?.top).toBeGreaterThanOrEqual(room - 18);
      await checked(page);
      const next = async () => {
        const { tag, words } = await focused(page);
        return [tag === 'BODY', words.includes(done)];
      };
      await expect.poll(next).toEqual([false, false]);
      // Nor on what the keys went on to.
      const under = () => page.evaluate(() => document.activeElement?.getBoundingClientRect().bottom);
      await expect.poll(under).toBeLessThanOrEqual(said?.top ?? 0);

      const other = page.locator('.finding-head').nth(1);
      await other.focus();
      await page.keyboard.press('Enter');
      await press(page, 'Leave it');
      await page.keyboard.type('for today');
      await page.locator('.leave-form').getByRole('button', { name: 'Leave it' }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('region', { name: 'Left as they are' }).getByText('for today').waitFor();
      await checked(page);
      await expect.poll(async () => (await focused(page)).className).toBe('finding-head');

      await press(page, 'Take up again', 'section[aria-labelledby="left-title"]');
      await page.locator('.said').getByText('Taken up again.').waitFor();
      await checked(page);
      await expect.poll(() => focused(page)).toMatchObject({ tag: 'H2', words: 'Checks' });
      await page.context().close();
    },
    180_000,
  );
});
