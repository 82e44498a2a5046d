import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pictureOf } from '#model/schema/picture.ts';
import { axeFindings, type SizeName } from '#tests/support/browser.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { onScreen, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();
/** Where pictures for people to look at go; without it none are made. */
const pictures = process.env.LOWSHELF_PICTURES;

/** The demo room is drawn; its checks are not waited for. */
async function onDemo(page: Page): Promise<void> {
  await page.goto(`${served.server.address}/#demo`);
  await page.locator('.plan-paper[data-view]').waitFor();
}

async function newRoom(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size);
  await onDemo(page);
  await page.getByRole('button', { name: 'File' }).click();
  await page.getByRole('menuitem', { name: 'New classroom' }).click();
  await page.getByLabel('Name of the class').fill('Alder room');
  await page.getByRole('button', { name: 'Measure it wall by wall' }).click();
  await page.getByLabel('Wall 1', { exact: true }).waitFor();
  return page;
}
const focused = (page: Page): Promise<string | undefined> =>
  page.evaluate(
    () => document.activeElement?.textContent || document.activeElement?.closest('tr')?.querySelector('label')?.textContent || undefined,
  );

describe('a room of six walls', () => {
  it('is typed by the keyboard alone: misclosure said, spread, put on the sheet, taken back', async () => {
    const page = await newRoom('wide');
    const { keyboard } = page;
    // The first field waits for the keys; the sheet under the dialog is still the one that was open.
    expect(await page.getByRole('region', { name: 'Title block', includeHidden: true }).textContent()).not.toContain('Alder room');
    await page.waitForFunction(() => document.activeElement?.closest('tr')?.querySelector('label')?.textContent === 'Wall 1');
    const walls: readonly (readonly [length: string, isLeft?: boolean])[] = [
      ['6.00'],
      ['300'],
      ['2 m', true],
      ['2.00'],
      ['4.03'],
      ['5.01'],
    ];
    for (const [i, [length, isLeft]] of walls.entries()) {
      await expect.poll(() => focused(page)).toBe(`Wall ${i + 1}`);
      await keyboard.type(length);
      if (isLeft) {
        await keyboard.press('Tab');
        await keyboard.type('left 90');
      }
      await keyboard.press('Enter');
    }
    await page.getByText('0.03 m open: 0.03 m west, 0.01 m north; 1 in 697 of the way round.').waitFor();
    await expect
      .poll(() => page.locator('td.walk-change').allTextContents())
      .toEqual(['+0.015 m', '+0.003 m', '−0.005 m', '+0.002 m', '−0.01 m', '−0.005 m']);
    await expect.poll(() => focused(page)).toBe('Spread it over the walls');
    if (pictures) await page.screenshot({ path: `${pictures}/measure-wide.png` });
    expect(await axeFindings(page)).toEqual([]);
    await keyboard.press('Enter');
    await page.getByText('Spread: the walls meet.').waitFor();
    // Nothing of the sheet has changed so far.
    while ((await focused(page)) !== 'Put it on the sheet') await keyboard.press('Tab');
    await keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    const { room } = await savedFile(page);
    expect(room.survey?.walls.map(({ length, turn }) => [length, turn])).toEqual([
      [6000, 90],
      [3000, 90],
      [2000, -90],
      [2000, 90],
      [4030, 90],
      [5010, 90],
    ]);
    expect(room.corners.length).toBe(6);
    expect(room.corners[1]?.x).toBeCloseTo(6015, 0);
    expect(room.corners[1]?.y).toBe(0);
    await page.context().close();
  }, 120_000);
});

describe('a picture under the drawing', () => {
  it('is scaled by two points, by touch on a tablet', async () => {
    const page = await pageOf(served.browser, 'AX', 'tablet');
    await onDemo(page);
    await page.getByRole('button', { name: 'Draw', exact: true }).tap();
    await page.getByRole('menuitem', { name: 'Picture under the drawing' }).tap();
    const picture = await page.evaluate(() => {
      const canvas = document.createElement('canvas');
      canvas.width = 2600;
      canvas.height = 1000;
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no canvas');
      // Noise: a photo that does not get small by itself.
      const pixels = context.createImageData(2600, 1000);
      for (let i = 0; i < pixels.data.length; i++) pixels.data[i] = (i * 2654435761) >>> 24;
      context.putImageData(pixels, 0, 0);
      return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] ?? '';
    });
    await page
      .getByLabel('Picture of a plan: JPG, PNG or WebP')
      .setInputFiles({ name: 'plan.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(picture, 'base64') });
    await page.getByRole('button', { name: 'Set its scale by two points' }).tap({ timeout: 20_000 });
    const laid = pictureOf((await savedFile(page)).room.picture);
    if (!laid) throw new Error('the picture is not kept');
    expect(laid.source.length).toBeLessThanOrEqual(300 * 1024);
    expect(laid.width).toBeLessThanOrEqual(2400);

    const [from, to] = [
      { x: 2000, y: 2000 },
      { x: 5000, y: 2000 },
    ];
    for (const place of [from, to]) {
      const { x, y } = await onScreen(page, place);
      await page.touchscreen.tap(x, y);
    }
    await page.getByLabel('It is so long').fill('6.00');
    if (pictures) await page.screenshot({ path: `${pictures}/picture-tablet.png` });
    await page.getByRole('button', { name: 'Set the scale', exact: true }).tap();
    await page.getByText('The picture is to scale').first().waitFor();
    const scaled = pictureOf((await savedFile(page)).room.picture);
    if (!scaled) throw new Error('the picture is gone');
    // A finger lands within a px or two of 3.00 m: twice the size.
    expect(scaled.scale / laid.scale).toBeGreaterThan(1.95);
    expect(scaled.scale / laid.scale).toBeLessThan(2.05);
    await page.getByRole('button', { name: 'Take back' }).tap();
    expect(pictureOf((await savedFile(page)).room.picture)?.scale).toBeCloseTo(laid.scale, 6);
    await page.context().close();
  }, 120_000);
});
