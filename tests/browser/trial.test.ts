import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();

async function places(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size);
  await openDemo(page, served.server);
  await page.getByRole('tab', { name: /Places/ }).click();
  await page.locator('#places-statement').waitFor({ timeout: 30_000 });
  await checked(page);
  return page;
}

async function tryChild(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'If a child came' }).click();
  await page.getByRole('dialog', { name: 'If a child came' }).waitFor();
  // It begins within the ages of the class, which has three to six.
  expect([await page.getByLabel('Age: years').inputValue(), await page.getByLabel('and months').inputValue()]).toEqual(['3', '0']);
  await page.getByLabel('Age: years').fill('2');
  await page.getByLabel('and months').fill('9');
}

const cells = (page: Page, row: string) =>
  page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: row, exact: true }) })
    .getByRole('cell');

describe.each(screens('wide', 'tablet', 'phone'))('a promised child on a %s screen', (size) => {
  it('is tried before she is added: floor, adults and fixtures before and after', async () => {
    const page = await places(size);
    await tryChild(page);
    // England, C01: 2.3 m² a child from three, 2.5 m² from two.
    await expect.poll(() => cells(page, 'Children').allTextContents()).toEqual(['24', '25']);
    await expect.poll(() => cells(page, 'Floor they need').allTextContents()).toEqual(['55.20 m²', '57.70 m²']);
    const said = page.getByRole('status').filter({ hasText: 'needs 2.50 m² of floor by the rule of England' });
    await expect.poll(() => said.textContent()).toContain('outside the class: it has ages 3 to 6');
    await page.getByLabel('How many come').fill('3');
    await expect.poll(() => cells(page, 'Floor they need').allTextContents()).toEqual(['55.20 m²', '62.70 m²']);
    await page.getByLabel('Age: years').fill('3');
    await expect.poll(() => cells(page, 'Floor they need').allTextContents()).toEqual(['55.20 m²', '62.10 m²']);
    await expect.poll(() => page.getByRole('status').filter({ hasText: 'The floor is too small by' }).count()).toBe(1);
    await page.getByLabel('and months').fill('12');
    await expect.poll(() => page.getByRole('alert').filter({ hasText: 'from 0 to 11' }).count()).toBe(1);
    await expect.poll(() => page.getByRole('button', { name: 'Add to the class' }).isDisabled()).toBe(true);
    await page.getByLabel('Age: years').fill('7');
    await page.getByLabel('and months').fill('0');
    await expect.poll(() => page.getByRole('status').filter({ hasText: 'beyond the rows of England for floor' }).count()).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    await page.getByRole('button', { name: 'Leave it as it is' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect((await savedFile(page)).children.groups.map(({ count }) => count)).toEqual([8, 9, 7]);
    await page.context().close();
  }, 120_000);
});

describe('adding her', () => {
  const shared = onePage(() => places('wide'));

  it('to the class now, and taking it back', async () => {
    const page = await shared();
    await tryChild(page);
    await page.getByRole('button', { name: 'Add to the class' }).click();
    await page.locator('.said').getByText('Added: 1 child of 2 years 9 months').waitFor();
    await page
      .getByText(/25 are enrolled/)
      .first()
      .waitFor({ timeout: 30_000 });
    expect((await savedFile(page)).children.groups.at(-1)).toMatchObject({
      name: '2 years 9 months',
      fromMonths: 33,
      toMonths: 34,
      count: 1,
    });
    await page.getByRole('button', { name: 'Take back' }).click();
    await page
      .getByText(/24 are enrolled/)
      .first()
      .waitFor({ timeout: 30_000 });
    expect((await savedFile(page)).children.groups.length).toBe(3);
  }, 120_000);

  it('on a date: from the children entered for it, into the year', async () => {
    const page = await shared();
    await tryChild(page);
    await page.getByLabel('On (empty: now)').fill('2027-05-01');
    await page.getByText('From the children entered for 5 April 2027').waitFor();
    await expect.poll(() => cells(page, 'Children').allTextContents()).toEqual(['25', '26']);
    await page.getByRole('button', { name: 'Add to the class' }).click();
    await page.getByText('26 are promised from 1 May 2027').waitFor({ timeout: 30_000 });
    const saved = await savedFile(page);
    expect(saved.children.groups.length).toBe(3);
    expect(saved.enrolment.at(-1)?.from).toBe('2027-05-01');
  }, 120_000);
});
