import { readFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { readClassroomFile } from '#model/schema/readFile.ts';
import type { Classroom, Piece } from '#model/schema/types.ts';
import { openPerson, type ServedAt, type SizeName } from './browser.ts';

/** A person's page with a name that is already known on the device. */
export async function pageOf(browser: Browser, initials: string, size: SizeName = 'wide', keepsPage = false): Promise<Page> {
  const person = await openPerson(browser, size, keepsPage);
  await person.addInitScript((me) => localStorage.setItem('lowshelf.me', JSON.stringify(me)), { name: `Person ${initials}`, initials });
  return person.newPage();
}

/** Opens a fresh demo room and waits until its checks have answered. */
export async function openDemo(page: Page, server: ServedAt): Promise<void> {
  await page.goto(`${server.address}/#demo`);
  await page.getByRole('tab', { name: /Room/ }).waitFor();
  await checked(page);
}

/** Until the checks have looked at everything there is now. */
export async function checked(page: Page): Promise<void> {
  await page.locator('.counts, .finding-head, #places-statement').first().waitFor({ state: 'attached', timeout: 60_000 });
  // What was just done has reached the checks, and then their words the page.
  await atRest(page);
  await page.getByText('still looking').first().waitFor({ state: 'detached', timeout: 60_000 });
  await atRest(page);
}

/** Until what was just done is drawn: two frames, and then nothing more to do. Without a named function, which the loader of the bench wraps. */
export async function atRest(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => requestIdleCallback(() => done(), { timeout: 5_000 })));
      }),
  );
}

/** Focus is there, or comes within a moment: what gives it back does so a frame after it has gone. */
export async function hasFocus(target: Locator): Promise<void> {
  await target.page().waitForFunction((node) => node === document.activeElement, await target.elementHandle(), { timeout: 5_000 });
}

/** The classroom as it would be saved to a file now. */
export async function savedFile(page: Page): Promise<Classroom> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: 'File', exact: true })
      .click()
      .then(() => page.getByRole('menuitem', { name: 'Save a file' }).click()),
  ]);
  const read = readClassroomFile(readFileSync(await download.path(), 'utf8'));
  if (!read.ok) throw new Error(`the saved file cannot be read: ${JSON.stringify(read.problems)}`);
  return read.classroom;
}

export async function savedPiece(page: Page, id: string): Promise<Piece | undefined> {
  const classroom = await savedFile(page);
  return classroom.arrangements.find((a) => a.id === classroom.current)?.pieces.find((p) => p.id === id);
}

/** Where a place of the plan (mm) lies on the screen (px). */
export async function onScreen(page: Page, place: { x: number; y: number }): Promise<{ x: number; y: number }> {
  const paper = page.locator('.plan-paper');
  const box = await paper.boundingBox();
  const [k, x, y] = ((await paper.getAttribute('data-view')) ?? '').split(' ').map(Number);
  if (!box || k === undefined || x === undefined || y === undefined) throw new Error('the plan is not drawn');
  return { x: box.x + place.x * k + x, y: box.y + place.y * k + y };
}

/** Drags with the mouse from one place of the plan to another, in steps as a hand does. */
export async function dragOnPlan(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  const a = await onScreen(page, from);
  const b = await onScreen(page, to);
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step++) await page.mouse.move(a.x + ((b.x - a.x) * step) / 12, a.y + ((b.y - a.y) * step) / 12);
  await page.mouse.up();
}
