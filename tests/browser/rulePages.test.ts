import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { shownHeadings } from '#tests/support/rulePages.ts';
import { runs } from '#tests/support/runs.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, hasFocus, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

async function demo(size: SizeName, keepsPage = false): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size, keepsPage);
  await openDemo(page, served.server);
  if (size === 'phone') await page.getByRole('button', { name: /^Checks/ }).click();
  await checked(page);
  return page;
}

const shared = onePage(() => demo('wide'));

const line = (page: Page) => page.getByRole('button', { name: /each check behind “Can everyone get through\?”/ });

async function openPage(page: Page): Promise<void> {
  await line(page).click();
  await page.getByRole('button', { name: 'Why? Is the way to every front wide enough?' }).click();
  await bothRooms(page);
}

async function backToSheet(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await line(page).click();
}

const bothRooms = (page: Page) => page.getByRole('dialog').locator('.example-plan').nth(1).waitFor({ timeout: 30_000 });

describe.each(screens('wide', 'tablet', 'phone'))('why? on a %s screen', (size) => {
  it('a check’s outcome stands under its question; its page is read, set well and left again', async () => {
    const page = await demo(size);
    const outcomes = page.getByRole('button', { name: /checks: .* each check behind “Can everyone get through\?”/ });
    await expect
      .poll(() => outcomes.textContent())
      .toMatch(/^7 checks: (\d found something, )?(\d cannot tell, )?\d fine, 3 do not apply$/);
    await outcomes.click();
    const why = page.getByRole('button', { name: 'Why? Is the way to every front wide enough?' });
    await why.click();
    await bothRooms(page);
    const dialog = page.getByRole('dialog', { name: 'Is the way to every front wide enough?' });

    const headings = await dialog.getByRole('heading', { level: 3 }).allTextContents();
    expect(headings).toEqual(shownHeadings);
    await expect.poll(() => dialog.getByText('ADA Standards for Accessible Design, 403.5.1, 2010, USA (federal)').count()).toBe(1);
    await expect
      .poll(() => dialog.locator('.page-verdict').allTextContents())
      .toEqual(['The check finds a problem:', 'The check finds it fine.']);
    await dialog.getByText('No way leads from a door to Sensorial A.').waitFor();
    expect(await dialog.textContent()).not.toContain('"pieces"');
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    // Nothing of the page is cut off or slides sideways.
    expect(
      await dialog.evaluate(
        (node) => [...node.querySelectorAll('*')].filter((e) => e.getBoundingClientRect().right > innerWidth + 1).length,
      ),
    ).toBe(0);

    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await hasFocus(why);
    await page.context().close();
  }, 120_000);
});

describe('a page', () => {
  // First of those that share the page: no other has opened one yet.
  it('is fetched when it is first opened, not with the sheet', async () => {
    const page = await shared();
    const fetched = (): Promise<string[]> =>
      page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name.replace(/^.*\//, '')));
    const isLate = (name: string): boolean => /^(rulePages|RulePageDialog|KneelDialog|LicenceDialog|TrialDialog)-/.test(name);
    expect((await fetched()).filter(isLate)).toEqual([]);
    await openPage(page);
    expect((await fetched()).filter(isLate).some((name) => name.startsWith('rulePages-'))).toBe(true);
    await backToSheet(page);
  }, 120_000);

  // What the pages' rooms come to is asked of each in a moment elsewhere (tests/unit/house/rulesComplete.test.ts); to draw all of them takes half a minute.
  it(`${runs(1, 0) ? 'every third' : 'every one'} of the 37 shows its two rooms, drawn and judged`, async () => {
    const page = await shared();
    await openPage(page);
    const dialog = page.getByRole('dialog');
    const checks = await dialog
      .getByLabel('Another check')
      .locator('option')
      .evaluateAll((options) => options.map((o) => [(o as HTMLOptionElement).value, o.textContent ?? ''] as const));
    expect(checks.length).toBe(37);
    for (const [check, asks] of checks.filter((_, i) => i % runs(3, 1) === 0)) {
      await dialog.getByLabel('Another check').selectOption(check);
      await page.getByRole('dialog', { name: asks, exact: true }).waitFor();
      await dialog.locator('.page-verdict.problem').waitFor({ timeout: 30_000 });
      await expect
        .poll(() => dialog.locator('.page-verdict').allTextContents(), { message: check })
        .toEqual(['The check finds a problem:', 'The check finds it fine.']);
      const inkOfBarest = () =>
        dialog.locator('.example-plan').evaluateAll((plans) =>
          Math.min(
            ...plans.map((plan) => {
              const canvas = plan as HTMLCanvasElement;
              const data = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
              let inked = 0;
              for (let i = 3; i < data.length; i += 4) if ((data[i] ?? 0) > 0) inked++;
              return inked;
            }),
          ),
        );
      await expect.poll(inkOfBarest, { message: check }).toBeGreaterThan(2000);
    }
    await backToSheet(page);
  }, 240_000);

  it('leads to the findings of its check, and a finding leads to its page', async () => {
    const page = await shared();
    const first = page.locator('.finding-head').first();
    await first.click();
    await page
      .locator('.finding.shown')
      .getByRole('button', { name: /^Why\?/ })
      .click();
    await bothRooms(page);
    const dialog = page.getByRole('dialog');
    const found = dialog.getByRole('heading', { name: 'In this class now' }).locator('..');
    await expect.poll(() => found.textContent()).toContain('A problem, in this arrangement:');
    const last = found.getByRole('button', { name: /^Show on the sheet:/ }).last();
    const message = ((await last.getAttribute('aria-label')) ?? '').replace('Show on the sheet: ', '');
    await last.click();
    await dialog.waitFor({ state: 'detached' });
    // The finding stays open; nothing that follows asks which is.
    await page.locator('.finding.shown .finding-text').filter({ hasText: message }).waitFor();
  }, 120_000);

  it('names what the class has set, follows to other pages, and is read by keyboard with the server gone', async () => {
    const page = await demo('wide', true);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    // What is not in the browser's own store by now would not come any more.
    await page.waitForFunction(async () =>
      (await Promise.all((await caches.keys()).map(async (key) => (await (await caches.open(key)).keys()).length))).some((n) => n > 20),
    );
    await page.context().setOffline(true);
    await page.reload();
    await checked(page);
    await line(page).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Why? Is the way to every front wide enough?' }).focus();
    await page.keyboard.press('Enter');
    await bothRooms(page);
    const dialog = page.getByRole('dialog');
    await expect.poll(() => dialog.getByText(/^width of a way:/).textContent()).toBe('width of a way: 0.915 m, the default');
    await dialog.getByRole('button', { name: '“Is every door wide enough?”' }).click();
    await page.getByRole('dialog', { name: 'Is every door wide enough?' }).waitFor();
    await bothRooms(page);
    await dialog.getByLabel('Another check').selectOption('reach/see');
    await page.getByRole('dialog', { name: 'Can the smallest child see what stands on the shelf?' }).waitFor();
    await bothRooms(page);
    await expect.poll(() => dialog.locator('.example-front').count()).toBe(2);
    await expect.poll(() => dialog.getByText('In this class: 15 degrees, the default.').count()).toBe(1);
    await page.context().close();
  }, 120_000);
});

describe('what cannot be told', () => {
  it('stands whole under “Measure these next”, with the page that says why', async () => {
    const page = await shared();
    const region = page.getByRole('region', { name: 'Measure these next' });
    const unknown = Number(/(\d+) not known/.exec((await page.locator('.counts').textContent()) ?? '')?.[1]);
    expect(unknown).toBeGreaterThan(0);
    await expect.poll(() => region.getByRole('listitem').count()).toBe(unknown);
    await region
      .getByRole('button', { name: /^Why\?/ })
      .first()
      .click();
    await bothRooms(page);
    await page.getByRole('dialog').getByText('It cannot tell yet:').waitFor();
  }, 120_000);
});
