import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName, screens, sizes } from '#tests/support/browser.ts';
import { settledLook } from '#tests/support/look.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { pageOf as openAs, openDemo } from '#tests/support/sheetPage.ts';

const served = servedPages();

const pageOf = (initials: string, size: SizeName = 'wide', keepsPage = false) => openAs(served.browser, initials, size, keepsPage);
const demo = (page: Page) => openDemo(page, served.server);

const sheets = [
  [/Room/, 'room'],
  [/Materials/, 'materials'],
  [/Places/, 'places'],
  [/Move day/, 'move-day'],
] as const;
/** What went wrong on a page since it was there. */
const errors = new WeakMap<Page, string[]>();

const opened = (size: SizeName) =>
  onePage(async () => {
    const page = await pageOf('MK', size);
    const seen: string[] = [];
    errors.set(page, seen);
    page.on('pageerror', (error) => seen.push(error.message));
    await demo(page);
    return page;
  });
const shared = { wide: opened('wide'), tablet: opened('tablet'), phone: opened('phone') };

async function onRoom(): Promise<Page> {
  const page = await shared.wide();
  await page.getByRole('tab', { name: /Room/ }).click();
  return page;
}

/** By mouse, and by touch however a tablet is turned. */
const looks = [
  ['wide', { wide: sizes.wide }],
  ['phone', { tablet: sizes.tablet, turned: { width: 768, height: 1024 }, phone: sizes.phone }],
] as const;

describe.each(looks)('the look, on a page opened on a %s screen', (size, viewports) => {
  // First of those that share the page: nothing has been done on it yet.
  it('is as it was reviewed, and reaches nowhere beyond the screen', async () => {
    const page = await shared[size]();
    for (const [sheet, name] of sheets) {
      await page.getByRole('tab', { name: sheet }).click();
      await page.waitForLoadState('networkidle');
      for (const [screen, viewport] of Object.entries(viewports)) {
        await page.setViewportSize(viewport);
        await page.waitForTimeout(400);
        // Another layout asks again.
        await page.waitForFunction(() => !/still looking|Being worked out/.test(document.body.textContent ?? ''), undefined, {
          timeout: 60_000,
        });
        const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(beyond, `${name} on ${screen}`).toBeLessThanOrEqual(0);
        const { share, most } = await settledLook(page, `${name}-${screen}`);
        expect.soft(share, `${name} on ${screen} looks otherwise`).toBeLessThanOrEqual(most);
      }
    }
    expect(errors.get(page)).toEqual([]);
  }, 180_000);
});

describe.each(screens('wide', 'tablet', 'phone'))('the frame on a %s screen', (size) => {
  it('has nothing that axe finds, before a classroom is open', async () => {
    const page = await pageOf('AX', size);
    await page.goto(served.server.address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.context().close();
  });

  it('has nothing that axe finds, on any sheet', async () => {
    const page = await shared[size]();
    await page.setViewportSize(sizes[size]);
    for (const [sheet, name] of sheets) {
      await page.getByRole('tab', { name: sheet }).click();
      await page.waitForLoadState('networkidle');
      await page.waitForTimeout(300);
      expect(await axeFindings(page), `on ${name}`).toEqual([]);
    }
    expect(errors.get(page)).toEqual([]);
  }, 180_000);
});

describe('a classroom on the sheet', () => {
  it('is shared by its address; each takes back only their own step', async () => {
    const mk = await onRoom();
    const rt = await pageOf('RT');
    await rt.goto(mk.url());
    await rt.getByRole('heading', { level: 1, name: 'Juniper room' }).waitFor();
    await mk.locator('.people').getByText('RT').waitFor();

    await rt.getByRole('button', { name: /^The class/ }).click();
    await rt.getByLabel('Name of the class').fill('Maple room');
    await rt.keyboard.press('Enter');
    await rt.keyboard.press('Escape');
    await mk.getByRole('heading', { level: 1, name: 'Maple room' }).waitFor();
    await expect.poll(() => mk.getByRole('button', { name: 'Take back' }).isEnabled()).toBe(false);
    await rt.keyboard.press('Control+z');
    await mk.getByRole('heading', { level: 1, name: 'Juniper room' }).waitFor();
    await rt.context().close();
  }, 90_000);

  it('opens and is changed with the server out of reach, says so, and shares it afterwards', async () => {
    const page = await pageOf('MK', 'wide', true);
    await demo(page);
    await page.getByText('here and shared', { exact: true }).waitFor();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Juniper room' }).waitFor();
    await page.getByText('kept here, no server in reach').waitFor();
    await page.getByRole('button', { name: /^The class/ }).click();
    await page.getByLabel('Name of the class').fill('Maple room');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await page.getByText('kept here, not yet shared: 1 change').waitFor();
    await page.context().setOffline(false);
    await page.getByText('here and shared', { exact: true }).waitFor({ timeout: 30_000 });
    await page.context().close();
  }, 90_000);

  it('mends what a check proposes in one step, and leaves a finding with a reason', async () => {
    const page = await onRoom();
    await page.getByText('still looking').waitFor({ state: 'detached', timeout: 30_000 });
    const fix = page.getByRole('button', { name: /^Do it/ }).first();
    const proposed = (await fix.getAttribute('aria-label')) ?? '';
    await fix.click();
    await page.locator('.said').getByText('Take back undoes it').waitFor();
    await page.getByRole('button', { name: proposed, exact: true }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByRole('button', { name: proposed, exact: true }).waitFor();

    const first = page.locator('.finding-head').first();
    const text = (await first.locator('.finding-text').textContent()) ?? '';
    await first.click();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByLabel('Why is it left as it is?').fill('the table moves on Monday');
    await page.locator('.leave-form').getByRole('button', { name: 'Leave it' }).click();
    const left = page.getByRole('region', { name: 'Left as they are' });
    await left.getByText('the table moves on Monday').waitFor();
    const lead = (await left.locator('.finding p').first().textContent()) ?? '';
    expect(lead.length > 20 && text.startsWith(lead)).toBe(true);
    await left.getByRole('button', { name: /^Take up again/ }).click();
    await left.waitFor({ state: 'detached' });
  }, 90_000);

  it('moves from sheet to sheet by the arrow keys, focus in sight', async () => {
    const page = await onRoom();
    await page.getByRole('tab', { name: /Room/ }).focus();
    await page.keyboard.press('ArrowLeft');
    const last = page.getByRole('tab', { name: /Move day/ });
    await expect.poll(() => last.getAttribute('aria-selected')).toBe('true');
    await expect.poll(() => last.evaluate((tab) => tab === document.activeElement && getComputedStyle(tab).outlineStyle)).toBe('solid');
    await page.locator('.step').first().waitFor({ timeout: 30_000 });
  }, 60_000);

  // Last: what is said of the file stays on the page.
  it('keeps everything when a file cannot be read, and says where and why', async () => {
    const page = await onRoom();
    const address = page.url();
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Open a file' }).click();
    await page.getByLabel('Classroom file').setInputFiles({
      name: 'broken.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format":"lowshelf.classroom","version":1,"name":3,"room":{"corners":[]},"arrangements":[]}'),
    });
    const alert = page.getByRole('alert').filter({ hasText: 'could not be read' });
    await expect
      .poll(() => alert.textContent())
      .toMatch(/broken\.json could not be read\. Nothing was changed\.[\s\S]*name[\s\S]*found 3, expected a string/);
    expect(page.url()).toBe(address);
  }, 60_000);
});
