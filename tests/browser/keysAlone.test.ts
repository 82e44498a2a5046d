import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { servedPages } from '#tests/support/servedPages.ts';
import { atRest, checked, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();

/** More presses of Tab than lie between what a person does on a sheet and what is done next. */
const MOST_TABS = 100;
/** More rows than any table has. */
const MOST_ROWS = 250;

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

async function tabInto(page: Page, selector: string): Promise<void> {
  for (let k = 0; k < MOST_TABS; k++) {
    await page.keyboard.press('Tab');
    if (await page.evaluate((part) => document.activeElement?.closest(part) !== null, selector)) return;
  }
  throw new Error(`Tab leads into no ${selector}`);
}

/** Walks down the table that focus is in, and along each row, until something of that name has focus. */
async function walkTo(page: Page, name: RegExp): Promise<void> {
  for (let k = 0; k < MOST_ROWS; k++) {
    let at = await focused(page);
    for (let along = 0; ; along++) {
      if (name.test(at)) return;
      await page.keyboard.press('ArrowRight');
      const next = await focused(page);
      if (next === at) {
        if (along > 0) await page.keyboard.press('Home');
        break;
      }
      at = next;
    }
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`no row of the table has ${name}`);
}

/** The part of the Room sheet that has focus; "": what stands around the parts. */
const part = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const parts = {
      '[role=tablist]': 'tabs',
      '.edge-tools': 'arrangement',
      '.verb-line': 'verbs',
      '.plan': 'plan',
      '.shelf-list, .tray-list': 'lists',
      '.checks': 'checks',
    };
    return Object.entries(parts).find(([selector]) => document.activeElement?.closest(selector))?.[1] ?? '';
  });

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

  it('a guide comes by Tab from the tabs to the checks, each table one stop, and slides a shelf from its row of the list', async () => {
    await page.getByRole('tab', { name: /Room/ }).focus();
    const parts = ['tabs'];
    let inLists = 0;
    for (let k = 0; parts.at(-1) !== 'checks' && k < MOST_TABS; k++) {
      // On the drawing Tab goes from thing to thing, until it is let go.
      if (parts.at(-1) === 'plan') await page.keyboard.press('Escape');
      await page.keyboard.press('Tab');
      const now = await part(page);
      if (now === 'lists') inLists++;
      if (now !== '' && now !== parts.at(-1)) parts.push(now);
      if (/^Choose Shelf/.test(await focused(page)) && (await page.locator('.row-verbs').count()) === 0) {
        await press(page, 'Home');
        await press(page, 'ArrowDown');
        const name = (await focused(page)).slice('Choose '.length);
        await press(page, 'Enter');
        // Chosen on the drawing as well: its verbs stand under its row, and in the strip.
        await page.locator('.room-strip').getByText(name).first().waitFor();
        await walkTo(page, /^east$/);
        await press(page, 'Enter');
        await said(page)
          .getByText(new RegExp(`^${name}, `))
          .waitFor();
        await press(page, 'Control+z');
        await expect.poll(() => focused(page)).toBe('east');
      }
    }
    expect(parts).toEqual(['tabs', 'arrangement', 'verbs', 'plan', 'lists', 'checks']);
    // 34 things of the room and the trays of a shelf, in six tables; beside them what stands above and below.
    expect(inLists).toBeLessThan(16);
  });

  it('a guide gives a material its place, goes on with the next row, and takes it back', async () => {
    await page.getByRole('tab', { name: /Room/ }).focus();
    await press(page, 'ArrowRight');
    await page.locator('.material-table').waitFor();
    await tabInto(page, '.material-table');
    // Where Tab comes in there is a material that was looked at, if any: the first is at the top.
    await page.keyboard.press('Control+Home');
    await walkTo(page, /^Place it: /);
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
    await walkTo(page, /^Step 2 done: /);
  });
});
