import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings } from '#tests/support/browser.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();
/** Where pictures for people to look at go; without it none are made. */
const pictures = process.env.LOWSHELF_PICTURES;

const proof = (page: Page) => page.getByRole('region', { name: 'The proof of the mats' });

async function picture(page: Page, name: string): Promise<void> {
  if (!pictures) return;
  await page
    .getByText(/mats? on the floor at once/)
    .first()
    .scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${pictures}/${name}.png` });
}

describe('the proof of the mats', () => {
  it.each(['wide', 'phone'] as const)(
    'tells how far it is, can be stopped, and its answer goes to the checks until the room changes, on a %s screen',
    async (size) => {
      const page = await pageOf(served.browser, 'MK', size);
      await openDemo(page, served.server);
      await checked(page);
      if (size === 'phone') await page.getByRole('button', { name: /^Checks/ }).click();
      await page.getByText(/^At least \d+ mats? on the floor at once, at most \d+\.$/).waitFor();

      const begin = proof(page).getByRole('button', { name: 'Prove how many mats' });
      await begin.focus();
      await page.keyboard.press('Enter');
      await page
        .getByTestId('proof-progress')
        .getByText(/at least \d+, at most \d+/)
        .waitFor({ timeout: 60_000 });
      await picture(page, `proof-going-${size}`);
      // The same button stops it, and focus has not moved.
      await page.keyboard.press('Enter');
      await proof(page).getByText('Stopped. What was found until then is kept.').waitFor();
      expect(await page.locator('.said').textContent()).toContain('Stopped.');

      await begin.click();
      const words = page.getByText(/^Exactly \d+ mats? on the floor at once\.$/);
      await words.waitFor({ timeout: 180_000 });
      await page
        .locator('.said')
        .getByText(/^Proven: exactly \d+ mats? on the floor at once, with every way kept\.$/)
        .waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await picture(page, `proof-done-${size}`);

      // Another arrangement is another floor.
      if (size === 'wide') {
        await page
          .getByRole('radio', { name: 'Open middle' })
          .or(page.getByRole('button', { name: 'Open middle' }))
          .first()
          .click();
        await begin.waitFor();
        await checked(page);
        expect(await words.count()).toBe(0);
        await page
          .getByRole('radio', { name: 'As it stands' })
          .or(page.getByRole('button', { name: 'As it stands' }))
          .first()
          .click();
        await words.waitFor();
      }
      // What was proven of this floor is known again after the page was loaded again.
      await page.reload();
      if (size === 'phone') await page.getByRole('button', { name: /^Checks/ }).click();
      await words.waitFor({ timeout: 60_000 });
      expect(await begin.count()).toBe(0);
      await page.context().close();
    },
    360_000,
  );

  it('says how far it was when the page was loaded again meanwhile, and goes on', async () => {
    const page = await pageOf(served.browser, 'MK', 'tablet');
    await openDemo(page, served.server);
    await proof(page).getByRole('button', { name: 'Prove how many mats' }).click();
    await page
      .getByTestId('proof-progress')
      .getByText(/at least \d+, at most \d+/)
      .waitFor({ timeout: 60_000 });
    await page.reload();
    await proof(page)
      .getByText(/^The proof was stopped when the page was loaded again or closed; so far at least \d+ mats, at most \d+\.$/)
      .waitFor({ timeout: 60_000 });
    await checked(page);
    await picture(page, 'proof-cut-tablet');
    await proof(page).getByRole('button', { name: 'Go on proving' }).click();
    await page.getByText(/^Exactly \d+ mats? on the floor at once\.$/).waitFor({ timeout: 180_000 });
    await page.context().close();
  }, 360_000);
});
