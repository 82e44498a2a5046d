import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();

async function moveDay(initials: string, size: SizeName, address = `${served.server.address}/#demo`): Promise<Page> {
  const page = await pageOf(served.browser, initials, size);
  await page.goto(address);
  await page.getByRole('tab', { name: /Move day/ }).click();
  await page.locator('.step').first().waitFor({ timeout: 30_000 });
  return page;
}

const step = (page: Page, title: string) => page.locator('.step').filter({ has: page.getByRole('button', { name: title }) });

describe('the day of the move', () => {
  const shared = onePage(() => moveDay('MK', 'wide'));

  it('a tick is seen by a colleague on a phone; what cannot be done says who waits for it; the order is changed by hand', async () => {
    const mk = await shared();
    await mk.getByText('0 of 24 done').waitFor();
    await mk.getByText('here and shared', { exact: true }).waitFor();
    const rt = await moveDay('RT', 'phone', mk.url());
    await rt.getByText('0 of 24 done').waitFor();

    await mk.getByLabel(/^Step 1 done: Empty shelves/).check();
    await mk.locator('.said').getByText('Step 1 is done.').waitFor();
    await rt.getByText('1 of 24 done').waitFor();
    const first = rt.locator('.step').first();
    await expect.poll(() => first.getByRole('checkbox').isChecked()).toBe(true);
    await expect.poll(() => first.locator('.initials').textContent()).toBe('MK');
    const box = await first.locator('.step-tick').boundingBox();
    expect(box && box.width >= 44 && box.height >= 44).toBe(true);

    // The cot cupboard stands where shelf 4 is to stand.
    await step(rt, 'Put cot cupboard away').getByRole('button', { name: 'Put cot cupboard away' }).click();
    await rt.getByRole('button', { name: 'Cannot be done' }).click();
    await step(rt, 'Put cot cupboard away')
      .getByText(/^Cannot be done\. Steps 6, 17, 23 and 24 wait for it\.$/)
      .waitFor();
    await rt.getByLabel('Why it cannot be done').fill('it is screwed down');
    await rt.keyboard.press('Enter');
    await step(mk, 'Put cot cupboard away').getByText('Cannot be done: it is screwed down.', { exact: false }).waitFor();
    await step(mk, 'Carry shelf 4').getByText('Waits for step 3, which cannot be done.').waitFor();

    // Table 1 comes to where cupboards stand now: not before they are gone.
    await mk.getByRole('button', { name: /^Step 2: Put paper cupboard away/ }).click();
    for (let i = 0; i < 5; i++) await step(mk, 'Put paper cupboard away').getByRole('button', { name: 'Later' }).click();
    await step(mk, 'Slide shelf 10').getByText('Does not work here: paper cupboard still stands there.').waitFor();
    expect(await axeFindings(mk)).toEqual([]);
    await mk.getByRole('button', { name: 'Back to the order worked out' }).click();
    await mk.getByText('Does not work here').waitFor({ state: 'detached' });
    expect((await savedFile(mk)).moveDay).toMatchObject({
      'a1>a2': { 'out:store2': { state: 'cannot', by: 'RT', why: 'it is screwed down' } },
    });

    for (const name of ['Crates', 'Plan']) {
      await rt.getByRole('button', { name, exact: true }).click();
      expect(await rt.evaluate(() => document.documentElement.scrollWidth <= innerWidth), name).toBe(true);
    }
    await rt.getByRole('button', { name: 'Crates', exact: true }).click();
    // A head and the crates A to K.
    await expect.poll(() => rt.getByRole('table').getByRole('row').count()).toBe(12);
    // What is ticked and what cannot be done stays: the next asks nothing of the day.
    await rt.context().close();
  }, 150_000);

  it('lays one arrangement over the other, and takes it off with the same verb', async () => {
    const page = await shared();
    await page.getByRole('tab', { name: /Room/ }).click();
    const verb = async (name: string): Promise<void> => {
      await page.getByRole('button', { name: 'Arrangement', exact: true }).click();
      await page.getByRole('menuitem', { name }).click();
    };
    await verb('Lay one over the other');
    const list = page.getByRole('region', { name: /over “Open middle”/ });
    await list.getByText('Table T2: 2.95 m west and 1.10 m south', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Open middle', exact: true }).click();
    await page.getByRole('region', { name: /“Open middle” over “As it stands”/ }).waitFor();
    await verb('Lay one over the other: take it off');
    await page.locator('.laid-over').waitFor({ state: 'detached' });
  }, 60_000);
});
