import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { atRest, hasFocus, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

async function demo(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size);
  await openDemo(page, served.server);
  return page;
}

async function kneel(page: Page, size: SizeName): Promise<void> {
  if (size !== 'wide') await page.locator('.swap button').filter({ hasText: /front/i }).click();
  await page.getByRole('button', { name: 'Kneel here' }).click();
  await page.locator('.kneel-picture').waitFor({ timeout: 30_000 });
}

async function standUp(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

describe.each(screens('wide', 'tablet', 'phone'))('kneeling before a shelf on a %s screen', (size) => {
  it('shows what she sees and says it in words; stepping back by key changes both', async () => {
    const page = await demo(size);
    await kneel(page, size);
    const dialog = page.getByRole('dialog', { name: 'Kneel here: shelf 1' });
    const said = dialog.getByRole('status');
    // What is said, what is drawn and the list are one.
    const seenOf = async (): Promise<number> => {
      await atRest(page);
      const words = /before the shelf she sees into (\d+) of (\d+) things\.$/.exec((await said.textContent()) ?? '');
      const drawn = await dialog.locator('.kneel-picture .kneel-spot.seen').count();
      expect([drawn, await dialog.locator('.kneel-how.seen').count()]).toEqual([Number(words?.[1]), Number(words?.[1])]);
      expect(await dialog.locator('.kneel-picture .kneel-spot').count()).toBe(Number(words?.[2]));
      expect(await dialog.getByRole('listitem').count()).toBe(Number(words?.[2]));
      return drawn;
    };
    // She stands where a child looks a shelf over, then as near as she can.
    await expect.poll(() => said.textContent()).toMatch(/^From 0\.90 m /);
    await seenOf();
    const far = dialog.getByRole('slider', { name: /How far before the shelf/ });
    await far.focus();
    await page.keyboard.press('Home');
    await expect.poll(() => said.textContent()).toMatch(/^From 0\.10 m /);
    expect(await seenOf()).toBeGreaterThan(4);
    // The way out is in sight however long the list is.
    const out = await dialog.getByRole('button', { name: 'Stand up' }).boundingBox();
    expect((out?.y ?? 9e9) + (out?.height ?? 0)).toBeLessThanOrEqual(page.viewportSize()?.height ?? 0);
    const [dusting, carrying] = ['Dusting', 'Carrying a tray'].map((hasText) => dialog.getByRole('listitem').filter({ hasText }));
    expect(await dusting?.textContent()).toMatch(/hidden by the board above; she sees it from 0\.\d\d m back/);
    expect(await carrying?.textContent()).toContain('she sees into it');

    await far.focus();
    for (let i = 0; i < 18; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => said.textContent()).toMatch(/^From 1\.00 m /);
    await seenOf();
    await expect.poll(() => dusting?.textContent()).toContain('she sees into it');
    expect(await carrying?.textContent()).toContain('too flat: she looks across it');
    expect(await dialog.locator('.kneel-picture .kneel-spot.flat').count()).toBeGreaterThan(0);
    expect(await dialog.getByRole('img', { name: /^The shelf from her eyes\. From 1\.00 m/ }).count()).toBe(1);
    expect(
      await dialog.getByRole('img', { name: /^Plan of the room; she stands 1\.0\d+ m|^Plan of the room; she stands 1\.00 m/ }).count(),
    ).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);

    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await hasFocus(page.getByRole('button', { name: 'Kneel here' }));
    await page.context().close();
  }, 120_000);
});

describe('kneeling', () => {
  const shared = onePage(() => demo('wide'));

  it('looks with an older child’s eyes, and goes to stand before what is chosen', async () => {
    const page = await shared();
    await kneel(page, 'wide');
    const dialog = page.getByRole('dialog');
    await dialog.getByText('her eyes are at 0.778 m').waitFor();
    await dialog.getByLabel('Whose eyes').selectOption({ label: 'The youngest of five-year-olds, 5 years 0 months' });
    await dialog.getByText('A girl of 5 years 0 months').waitFor();
    await expect.poll(() => dialog.getByText('her eyes are at 0.778 m').count()).toBe(0);
    const along = dialog.getByRole('slider', { name: /How far along it/ });
    const before = await along.inputValue();
    const row = dialog.getByRole('button', { name: 'Dusting', exact: true });
    await row.click();
    await expect.poll(() => row.getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => along.inputValue()).not.toBe(before);
    await expect.poll(() => dialog.locator('.kneel-tray.chosen').count()).toBe(1);
    await standUp(page);
  }, 120_000);

  it('is one press from a finding about seeing', async () => {
    const page = await shared();
    await page.locator('.finding-head').filter({ hasText: 'sees into boards up to' }).first().click();
    await page
      .locator('.finding.shown')
      .getByRole('button', { name: /^Kneel here/ })
      .click();
    const dialog = page.getByRole('dialog', { name: /^Kneel here: shelf 2/ });
    await dialog.locator('.kneel-picture').waitFor({ timeout: 30_000 });
    const first = dialog.getByRole('listitem').first();
    await expect.poll(() => first.getByRole('button').getAttribute('aria-pressed')).toBe('true');
    expect(await first.textContent()).toContain('stands above her eyes');
    // The finding and its shelf stay chosen: the next test chooses on another sheet.
    await standUp(page);
  }, 120_000);

  it('begins before the material chosen on the Materials sheet', async () => {
    const page = await shared();
    await page.getByRole('tab', { name: /Materials/ }).click();
    await page
      .getByRole('button', { name: /^Dusting/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Kneel here' }).click();
    const dialog = page.getByRole('dialog', { name: /^Kneel here: shelf 1/ });
    await dialog.locator('.kneel-picture').waitFor({ timeout: 30_000 });
    await expect.poll(() => dialog.getByRole('button', { name: 'Dusting', exact: true }).getAttribute('aria-pressed')).toBe('true');
  }, 120_000);
});
