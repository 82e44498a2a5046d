import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { placesLineOf } from '#client/places/placesLine.ts';
import { analyse } from '#model/analysis/report.ts';
import { readClassroom } from '#model/schema/readFile.ts';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { fillsOf, readPdf } from '#tests/support/pdfText.ts';
import { plainRoomFile } from '#tests/support/plainRoom.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { atRest, checked, openDemo, pageOf } from '#tests/support/sheetPage.ts';

const served = servedPages();

async function toPlaces(page: Page): Promise<void> {
  await page.getByRole('tab', { name: /Places/ }).click();
  await page.locator('#places-statement').waitFor({ timeout: 30_000 });
  await checked(page);
}

async function openSheet(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Licence sheet' }).click();
  await page.locator('.licence-paper').waitFor();
}

async function demoPlaces(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size);
  await openDemo(page, served.server);
  await toPlaces(page);
  return page;
}

const printed = async (page: Page) => {
  await atRest(page);
  const { pages, text } = readPdf(await page.pdf({ preferCSSPageSize: true }));
  return { pages, text: text.normalize('NFKC') };
};

describe.each(screens('wide', 'tablet', 'phone'))('the licence sheet on a %s screen', (size) => {
  it('prints on just one page of either paper, with the figures of the report and no buttons', async () => {
    const page = await demoPlaces(size);
    await openSheet(page);
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);

    const read = readClassroom(JSON.parse(readFileSync(resolve(import.meta.dirname, '../../client/demo/demo-room.json'), 'utf8')));
    if (!read.ok) throw new Error('the demo can be read');
    const line = placesLineOf(analyse(read.classroom, { mats: null }));
    if (!line || line.countedArea === null || line.needArea === null) throw new Error('places are in the report');
    for (const paper of ['A4', 'US Letter']) {
      await page.getByText(paper, { exact: true }).click();
      const { pages, text } = await printed(page);
      expect(pages, paper).toBe(1);
      for (const figure of [
        `Counted floor ${line.countedArea.toFixed(2)} m²`,
        `All ${line.enrolled} ${line.needArea.toFixed(2)} m²`,
        `By floor · binds ${line.byArea}`,
        `By adults ${line.byAdults}`,
        'Inside the walls 57.60 m²',
        'the rule takes it off (Statutory framework for the early years foundation stage)',
        'Not legal advice: your licensing authority decides.',
        'Signature',
      ])
        expect(text, paper).toContain(figure.normalize('NFKC'));
      for (const button of ['Print', 'Back to the sheet', 'If a child came', 'Paper']) expect(text, paper).not.toContain(button);
    }
    await page.context().close();
  }, 120_000);
});

describe('the licence sheet', () => {
  const shared = onePage(() => demoPlaces('wide'));

  it('is black on paper, and leaves other prints alone', async () => {
    const page = await shared();
    await openSheet(page);
    await page.emulateMedia({ media: 'print' });
    const colours = await page
      .locator('.licence-paper')
      .evaluate((paper) => [...new Set([...paper.querySelectorAll('*')].map((node) => getComputedStyle(node).color))]);
    expect(colours).toEqual(['rgb(0, 0, 0)']);
    await page.emulateMedia({ media: 'screen' });
    await page.keyboard.press('Escape');
    await page.locator('.licence-paper').waitFor({ state: 'detached' });
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('#places-statement').isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
  }, 120_000);

  it('is on white paper also where backgrounds are printed, and says what is not proven', async () => {
    const page = await shared();
    await openSheet(page);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(fillsOf(pdf)).toEqual([]);
    expect(readPdf(pdf).text.normalize('NFKC')).toContain('how many mats fit at the very most is not proven');
    await page.keyboard.press('Escape');
    await page.locator('.licence-paper').waitFor({ state: 'detached' });
  }, 120_000);

  it('stays one page for a class of many ages, rooms, kinds of floor and long names', async () => {
    const long = 'A name that goes on and on, as names of rooms in old houses do, past every margin of the paper it is printed on';
    const kinds = ['passage', 'walkway', 'toilet', 'kitchen', 'storage', 'staff', 'cots'] as const;
    const file = plainRoomFile({
      name: long,
      ruleSet: 'scotland',
      children: {
        groups: Array.from({ length: 30 }, (_, i) => ({
          id: `g${i}`,
          name: `${long} ${i}`,
          fromMonths: 24 + 3 * i,
          toMonths: 27 + 3 * i,
          count: 2,
        })),
      },
      enrolment: Array.from({ length: 9 }, (_, i) => ({
        from: `2090-0${i + 1}-01`,
        groups: [{ fromMonths: 36, toMonths: 48, count: 10 + i }],
      })),
      room: {
        zones: kinds.map((kind, i) => ({
          id: `z${i}`,
          kind,
          outline: [
            [700 * i, 2000],
            [700 * i + 600, 2000],
            [700 * i + 600, 2500],
            [700 * i, 2500],
          ] as [number, number][],
        })),
        otherRooms: Array.from({ length: 20 }, (_, i) => ({ name: `${long} ${i}`, area: 3 + i })),
        fixtures: [
          { id: 'f1', kind: 'column', x: 5500, y: 4500, width: 300, depth: 300 },
          { id: 'f2', kind: 'built-in', x: 4500, y: 4500, width: 600, depth: 300 },
        ],
      },
      pieces: [
        ...Array.from({ length: 12 }, (_, i) => ({
          id: `s${i}`,
          kind: 'shelf' as const,
          name: long,
          x: 500 + 440 * i,
          y: 3000,
          width: 400,
          depth: 300,
        })),
        { id: 'c1', kind: 'shelf', x: 500, y: 4000, width: 400, depth: 300, for: 'adults' },
        { id: 'c2', kind: 'shelf', x: 1500, y: 4000, width: 400, depth: 300, closed: true },
        { id: 't1', kind: 'table', x: 2500, y: 4000, width: 700, depth: 500 },
        { id: 'r1', kind: 'rug', x: 3500, y: 4000, width: 700, depth: 500 },
      ],
    });
    // The page is left with another classroom, so this comes last.
    const page = await shared();
    const demoAddress = page.url();
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Open a file' }).click();
    await page
      .getByLabel('Classroom file')
      .setInputFiles({ name: 'large.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(file)) });
    await page.waitForFunction((before) => location.href !== before, demoAddress);
    await toPlaces(page);
    await openSheet(page);
    expect(await axeFindings(page)).toEqual([]);
    for (const paper of ['A4', 'US Letter']) {
      await page.getByText(paper, { exact: true }).click();
      const { pages, text } = await printed(page);
      expect(pages, paper).toBe(1);
      expect(text).toContain('22 more groups');
      expect(text).toContain('16 more rooms');
      expect(text).toContain('6 more dates');
      expect(text).toContain('(1) does a passage to elsewhere count?');
      expect(text).toContain('Signature');
    }
  }, 180_000);
});
