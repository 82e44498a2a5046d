import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { benchRoom } from '#tests/bench/benchRoom.ts';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { sharedRoom } from '#tests/support/server/sharedRoom.ts';
import { checked, hasFocus, openDemo, pageOf } from '#tests/support/sheetPage.ts';

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

/** Of these one is open for some seconds, long enough to load the page again in between; as the room has them, less than one. */
const smallerMats = { ...benchRoom('room-03').floorWork, mat: { width: 1100, depth: 700 }, gap: 250 };

/** Checks stand behind a button on a phone. */
async function toChecks(page: Page, size: SizeName): Promise<void> {
  if (size === 'phone') await page.getByRole('button', { name: /^Checks/ }).click();
}

/** How many proofs the device keeps: what is shown is kept a moment later. */
const keptProofs = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    if (!(await indexedDB.databases()).some(({ name }) => name === 'lowshelf-proofs')) return 0;
    return new Promise<number>((done, fail) => {
      const opening = indexedDB.open('lowshelf-proofs');
      opening.onerror = () => fail(opening.error);
      opening.onsuccess = () => {
        const database = opening.result;
        const counting = database.transaction('proofs').objectStore('proofs').count();
        counting.onerror = () => fail(counting.error);
        counting.onsuccess = () => {
          database.close();
          done(counting.result);
        };
      };
    });
  });

async function changeArrangement(page: Page, name: string): Promise<void> {
  await page.getByRole('radio', { name }).or(page.getByRole('button', { name })).first().click();
}

describe('the proof of the mats', () => {
  it.each(screens('wide', 'tablet', 'phone'))(
    'tells how far it is, goes on after a reload, can be stopped, and its answer goes to the checks until the room changes, on a %s screen',
    async (size) => {
      const page = await pageOf(served.browser, 'MK', size);
      if (size === 'phone') {
        await page.goto(await sharedRoom(served.server, { ...benchRoom('room-03'), floorWork: smallerMats }));
        await checked(page);
      } else await openDemo(page, served.server);
      await toChecks(page, size);
      await page.getByText(/^At least \d+ mats? on the floor at once, at most \d+\.$/).waitFor();
      const howFar = page.getByTestId('proof-progress').getByText(/at least \d+, at most \d+/);
      await proof(page).getByRole('button', { name: 'Prove how many mats' }).click();
      await howFar.waitFor({ timeout: 60_000 });
      await picture(page, `proof-going-${size}`);
      // At once after that: on a quick machine the small room is proven some seconds later.
      await expect.poll(() => keptProofs(page), { timeout: 30_000, interval: 20 }).toBe(1);
      await page.reload();
      await toChecks(page, size);
      await proof(page)
        .getByText(/^The proof was stopped when the page was loaded again or closed; so far at least \d+ mats, at most \d+\.$/)
        .waitFor({ timeout: 60_000 });
      await picture(page, `proof-cut-${size}`);

      const goOn = proof(page).getByRole('button', { name: 'Go on proving' });
      await goOn.focus();
      await page.keyboard.press('Enter');
      await howFar.waitFor({ timeout: 60_000 });
      // The same button stops it, and focus has not moved.
      await page.keyboard.press('Enter');
      await proof(page).getByText('Stopped. What was found until then is kept.').waitFor();
      await expect.poll(() => page.locator('.said').textContent()).toContain('Stopped.');

      await page.keyboard.press('Enter');
      const words = page.getByText(/^Exactly \d+ mats? on the floor at once\.$/);
      await words.waitFor({ timeout: 180_000 });
      // Focus goes to what was found, not nowhere with the button.
      await hasFocus(words);
      await page
        .locator('.said')
        .getByText(/^Proven: exactly \d+ mats? on the floor at once, with every way kept\.$/)
        .waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await picture(page, `proof-done-${size}`);

      // Another arrangement is another floor.
      const begin = proof(page).getByRole('button', { name: 'Prove how many mats' });
      if (size === 'wide') {
        await changeArrangement(page, 'Open middle');
        await begin.waitFor();
        await checked(page);
        await expect.poll(() => words.count()).toBe(0);
        await changeArrangement(page, 'As it stands');
        await words.waitFor();
      }
      // What was proven of this floor is known again after the page was loaded again.
      await page.reload();
      await toChecks(page, size);
      await words.waitFor({ timeout: 60_000 });
      await expect.poll(() => begin.count()).toBe(0);
      await page.context().close();
    },
    360_000,
  );
});
