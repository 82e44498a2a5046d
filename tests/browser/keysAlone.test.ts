import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { servedPages } from '#tests/support/servedPages.ts';
import { atRest, checked, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();

/** More presses of Tab than any sheet has stops. */
const MOST_TABS = 250;

/** What is read out where focus is: its name. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    if (!at || at === document.body) return 'nothing';
    return (at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent ?? '').trim().replace(/\s+/g, ' ');
  });

/** Presses Tab until something of that name has focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let k = 0; k < MOST_TABS; k++) {
    await page.keyboard.press('Tab');
    if (name.test(await focused(page))) return;
  }
  throw new Error(`Tab leads to nothing called ${name}`);
}

async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await atRest(page);
}

const said = (page: Page) => page.locator('.said');

// No mouse is moved: each person has the keyboard alone. Only what was done is read otherwise.
describe('by keyboard alone', () => {
  let page: Page;
  beforeAll(async () => {
    page = await pageOf(served.browser, 'MK');
    await openDemo(page, served.server);
  }, 120_000);
  afterAll(() => page.context().close());

  it('a guide gives a material its place, goes on with the next row, and takes it back', async () => {
    await page.getByRole('tab', { name: /Room/ }).focus();
    await press(page, 'ArrowRight');
    await page.locator('.material-table').waitFor();
    await tabTo(page, /^Place it: /);
    const name = (await focused(page)).slice('Place it: '.length);
    await press(page, 'Enter');
    await said(page)
      .getByText(new RegExp(`^${name}: Shelf \\d+, `))
      .waitFor();
    // Focus is in the table, where the next is placed.
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.material-table') !== null)).toBe(true);
    await expect.poll(() => focused(page)).not.toBe('nothing');
    await page.getByRole('button', { name: `Place it: ${name}`, exact: true }).waitFor({ state: 'detached' });
    await press(page, 'Control+z');
    await page.getByRole('button', { name: `Place it: ${name}`, exact: true }).waitFor();
  });

  it('a director changes how many children there are and reads what the room takes', async () => {
    await page.getByRole('tab', { name: /Materials/ }).focus();
    await press(page, 'ArrowRight');
    await tabTo(page, /^Change children, dates, adults or rules$/);
    await press(page, 'Enter');
    await page.getByRole('dialog').waitFor();
    await tabTo(page, /^Children$/);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('3');
    await press(page, 'Tab');
    await press(page, 'Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => focused(page)).toBe('Change children, dates, adults or rules');
    await checked(page);
    const classroom = await savedFile(page);
    expect(classroom.children.groups[0]?.count).toBe(3);
  });

  it('a team ticks the first step of the move, and the next takes its turn', async () => {
    await page.getByRole('tab', { name: /Places/ }).focus();
    await press(page, 'ArrowRight');
    await page.locator('.step').first().waitFor();
    await tabTo(page, /^Step 1 done: /);
    await press(page, 'Space');
    await expect.poll(() => page.getByRole('checkbox', { name: /^Step 1 done: / }).isChecked()).toBe(true);
    await expect.poll(() => focused(page)).toMatch(/^Step \d+ done: /);
    await tabTo(page, /^Step 2 done: /);
  });
});
