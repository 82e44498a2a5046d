import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { thingAt } from '#model/document/overwritten.ts';
import { openPerson, sizes, startServer } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { sharedRoom } from '#tests/support/server/sharedRoom.ts';
import { hasFocus, openDemo, pageOf, savedFile, savedPiece } from '#tests/support/sheetPage.ts';

const served = servedPages();
const LONG = { timeout: 40_000 };
const bench = resolve(import.meta.dirname, '../bench/rooms/bench-400.json');

const shared = (page: Page) => page.getByText('here and shared').first().waitFor(LONG);
const chooseFirst = async (page: Page): Promise<void> => {
  await page.locator('.plan-paper').focus();
  await page.keyboard.press('Tab');
};

const oneShelf = {
  ...plainRoom({ pieces: [{ id: 'pl1', kind: 'shelf', x: 3000, y: 2500, width: 1200, depth: 320, height: 700 }] }),
  current: 'a1',
};

const shownToTeam = onePage(async () => {
  const page = await pageOf(served.browser, 'MK');
  await openDemo(page, served.server);
  await shared(page);
  return page;
});

describe('states of the sheet', () => {
  it('by the address to look: all that is on the sheets, nothing that changes it, and a remark that the team sees', async () => {
    const team = await shownToTeam();
    await team.getByRole('button', { name: 'Share this classroom' }).click();
    const address = await team.getByRole('textbox', { name: 'To look' }).inputValue();
    expect(await team.getByRole('textbox', { name: 'To change' }).inputValue()).toBe(team.url());
    expect(address).not.toContain(new URL(team.url()).hash.slice('#room='.length));
    await team.keyboard.press('Escape');

    const guest = await pageOf(served.browser, 'LS', 'phone');
    await guest.goto(address);
    await guest.getByText('You may look and remark').waitFor(LONG);
    for (const verb of ['Take back', 'Draw'])
      await expect.poll(() => guest.getByRole('button', { name: verb, exact: true }).count()).toBe(0);
    const before = await savedPiece(guest, 'pl1');
    await chooseFirst(guest);
    await guest.getByRole('button', { name: 'See its front' }).waitFor();
    await expect.poll(() => guest.getByRole('button', { name: /Put away|Turn|Slide/ }).count()).toBe(0);
    await guest.keyboard.press('ArrowUp');
    await guest.getByRole('status').getByText('You may look and remark here, not change').waitFor(LONG);
    expect(await savedPiece(guest, 'pl1')).toEqual(before);
    for (const sheet of ['Materials', 'Places', 'Move day', 'Room']) {
      await guest.getByRole('tab', { name: new RegExp(sheet) }).click();
      await guest.getByText('The drawing is being laid out').waitFor({ state: 'detached', ...LONG });
      await expect.poll(() => guest.getByRole('button', { name: /^(Put it here|Done|Do it|Add your own)/ }).count()).toBe(0);
    }
    await guest.getByRole('button', { name: 'Remark' }).click();
    await guest.locator('.plan-paper').click({ position: { x: 150, y: 200 } });
    await guest.getByLabel('Remark', { exact: true }).fill('Which shelf is for the youngest?');
    await guest.getByRole('button', { name: 'Put it there' }).click();
    const note = async () => (await savedFile(team)).notes.map(({ text }) => text);
    await expect.poll(note, LONG).toContain('Which shelf is for the youngest?');
    await shared(guest);
    await team.getByRole('region', { name: 'Remarks on the plan' }).getByText('Which shelf is for the youngest?').waitFor(LONG);
    // The remark stays on the sheet; the pieces are as they were.
    await guest.context().close();
  }, 180_000);

  it('where the work is kept is seen with others at the sheet, nobody’s name given, on every screen and sheet', async () => {
    const address = await sharedRoom(served.server, oneShelf);
    const page = await (await openPerson(served.browser, 'tablet')).newPage();
    await page.goto(address);
    await shared(page);
    const others = await Promise.all(['IB', 'RT'].map((initials) => pageOf(served.browser, initials, 'phone')));
    for (const other of others) {
      await other.goto(address);
      await other.getByRole('tab', { name: /Move day/ }).click(LONG);
    }
    const here = page.locator('.people');
    await here.getByText('at the move day').nth(1).waitFor(LONG);
    await here.getByRole('button', { name: 'say who you are' }).waitFor();
    const kept = page.getByText('here and shared').first();
    const isSeen = () =>
      kept.evaluate((words) => {
        const range = document.createRange();
        range.selectNodeContents(words);
        const { left, right, top, bottom } = range.getBoundingClientRect();
        // Nothing lies over any end of the words, and none is beyond the screen or scrolled off.
        return [left + 1, right - 1].every((x) => [top + 1, bottom - 1].every((y) => words.contains(document.elementFromPoint(x, y))));
      });
    for (const viewport of [
      ...Object.values(sizes),
      { width: 1024, height: 600 },
      { width: 1280, height: 640 },
      { width: 768, height: 1024 },
    ]) {
      await page.setViewportSize(viewport);
      for (const sheet of ['Places', 'Room']) {
        await page.getByRole('tab', { name: new RegExp(sheet) }).click();
        await expect.poll(isSeen).toBe(true);
      }
      await page.getByRole('button', { name: 'Tape' }).click();
      expect(await isSeen(), `with the tape, ${viewport.width} × ${viewport.height}`).toBe(true);
      await page.getByRole('button', { name: 'Tape' }).click();
    }
    await page.setViewportSize(sizes.tablet);
    await chooseFirst(page);
    await page.getByRole('group', { name: /^Verbs of/ }).waitFor();
    expect(await isSeen()).toBe(true);
    for (const one of [page, ...others]) await one.context().close();
  }, 180_000);

  it('“Who are you?” opens in its first field, and leaves the keys where they were', async () => {
    const page = await (await openPerson(served.browser, 'wide')).newPage();
    await page.goto(await sharedRoom(served.server, oneShelf));
    const plan = page.locator('.plan-paper[data-view]');
    await plan.waitFor(LONG);
    await plan.focus();
    await page.getByRole('button', { name: 'say who you are' }).click();
    await hasFocus(page.getByLabel('Name', { exact: true }));
    await page.keyboard.type('Iris Birch');
    await page.keyboard.press('Enter');
    await page.locator('.people').getByText('IB').waitFor();
    await hasFocus(plan);
    await page.keyboard.press('s');
    await page.locator('.draft-line').getByText('Press where it stands.').waitFor();
    // By keys it goes back to what opened it.
    await page.locator('.people').getByRole('button', { name: 'you' }).focus();
    await page.keyboard.press('Enter');
    await hasFocus(page.getByLabel('Name', { exact: true }));
    await page.keyboard.press('Escape');
    await hasFocus(page.locator('.people').getByRole('button', { name: 'you' }));
    await page.context().close();
  }, 120_000);

  it('changed by two who could not meet: the one who is overwritten sees both, keeps hers in one step, takes it back', async () => {
    const data = mkdtempSync(join(tmpdir(), 'lowshelf-'));
    const server = await startServer({ data });
    const [mk, rt] = [await pageOf(served.browser, 'MK'), await pageOf(served.browser, 'RT', 'phone')];
    const address = await sharedRoom(server, oneShelf);
    for (const page of [mk, rt]) {
      await page.goto(address);
      await shared(page);
    }
    for (const page of [mk, rt]) expect(await savedPiece(page, 'pl1')).toBeDefined();
    // What a chosen thing and the menu need is fetched by now; then both are without the server.
    for (const page of [mk, rt]) await chooseFirst(page);
    for (const page of [mk, rt]) await page.getByLabel('West wall').first().waitFor(LONG);
    await server.stop();
    await Promise.all(
      [mk, rt].map((page) =>
        page
          .getByText(/no server in reach/)
          .first()
          .waitFor(LONG),
      ),
    );
    await mk.keyboard.press('Shift+ArrowUp');
    await rt.keyboard.press('Shift+ArrowLeft');
    await Promise.all(
      [mk, rt].map((page) =>
        page
          .getByText(/kept here, not yet shared: \d+ changes?/)
          .first()
          .waitFor(LONG),
      ),
    );
    const wrote = [await savedPiece(mk, 'pl1'), await savedPiece(rt, 'pl1')] as const;
    expect(wrote[0]).not.toEqual(wrote[1]);
    const again = await startServer({ data, port: Number(new URL(server.address).port) });
    const conflict = (page: Page) => page.locator('.conflict');
    await expect.poll(async () => (await conflict(mk).count()) + (await conflict(rt).count()), LONG).toBe(1);
    const isMine = (await conflict(mk).count()) === 1;
    const [loser, winner, name] = isMine ? [mk, rt, 'RT’s'] : [rt, mk, 'MK’s'];
    await conflict(loser)
      .getByText(new RegExp(`^${name}: at `))
      .waitFor();
    await conflict(loser)
      .getByText(/^Mine: at /)
      .waitFor();
    const theirs = await savedPiece(winner, 'pl1');
    expect(await savedPiece(loser, 'pl1')).toEqual(theirs);

    // It stays until it is settled, also when the page is loaded again.
    await loser.reload();
    await conflict(loser).getByRole('button', { name: 'Keep mine' }).click(LONG);
    await conflict(loser).waitFor({ state: 'detached' });
    expect(await savedPiece(loser, 'pl1')).toEqual(wrote[isMine ? 0 : 1]);
    await loser.getByRole('button', { name: 'Take back' }).click();
    expect(await savedPiece(loser, 'pl1')).toEqual(theirs);
    await mk.context().close();
    await rt.context().close();
    await again.stop();
    rmSync(data, { recursive: true, force: true });
  }, 180_000);

  it('a tablet that lost the server before it had everything fetches what is missing by itself, styles too, once the server is back', async () => {
    const data = mkdtempSync(join(tmpdir(), 'lowshelf-'));
    const server = await startServer({ data });
    const page = await pageOf(served.browser, 'MK', 'tablet');
    await page.goto(await sharedRoom(server, oneShelf));
    await page.locator('.plan-paper[data-view]').waitFor(LONG);
    await server.stop();
    await page.getByRole('button', { name: 'Front', exact: true }).click();
    const notHere = page.getByText('This part of the page is not on this device yet');
    await notHere.first().waitFor(LONG);
    const again = await startServer({ data, port: Number(new URL(server.address).port) });
    await notHere.first().waitFor({ state: 'detached', ...LONG });
    const head = page.locator('.front-head');
    await head.waitFor(LONG);
    expect(await head.evaluate((node) => getComputedStyle(node).display)).toBe('flex');
    await page.context().close();
    await again.stop();
    rmSync(data, { recursive: true, force: true });
  }, 120_000);

  it('a room of 400 pieces opens from a file on a small screen, drawing and list swapped', async () => {
    const page = await pageOf(served.browser, 'AO', 'phone');
    await page.goto(`${served.server.address}/#demo`);
    await page.locator('.plan-paper[data-view]').waitFor(LONG);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Open a file' }).click();
    await page.locator('input[type=file]').setInputFiles(bench);
    await page.waitForFunction(() => !document.title.startsWith('Juniper'), undefined, LONG);
    await page.locator('.plan-paper[data-view]').waitFor(LONG);
    await page.getByRole('button', { name: 'Shelves', exact: true }).click();
    await expect.poll(() => page.locator('.shelf-table tbody tr').count()).toBeGreaterThan(100);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.context().close();
  }, 180_000);

  it('entries that cannot be read are named, mended by a figure or by leaving a field out, or taken out with a copy', async () => {
    const page = await shownToTeam();
    // Another program writes what no file may hold.
    const doc = new Y.Doc();
    const id = new URL(page.url()).hash.slice('#room='.length);
    const other = new WebsocketProvider(`${served.server.address.replace('http', 'ws')}/sync`, id, doc, {
      WebSocketPolyfill: WebSocket as never,
      disableBc: true,
    });
    await new Promise<void>((done) => other.on('sync', () => done()));
    const piece = (name: string) => thingAt(doc, ['arrangements', 'a1', 'pieces', name]);
    doc.transact(() => {
      piece('pl1')?.set('width', 'wide');
      piece('pl2')?.set('name', 7);
      piece('t5')?.set('kind', 'sofa');
    });
    await page.getByText('3 entries of this classroom cannot be read').waitFor(LONG);
    await page.getByRole('button', { name: 'Which?' }).click();
    const entries = page.locator('.repair-entry');
    await entries
      .filter({ hasText: 'found 7' })
      .getByRole('button', { name: /^Mend it/ })
      .click();
    await page.getByText('2 entries of this classroom cannot be read').waitFor(LONG);
    const figure = entries.filter({ hasText: 'found "wide"' }).getByLabel(/^Mend it/);
    await figure.fill('1.80');
    await figure.press('Enter');
    await page.getByText('1 entry of this classroom cannot be read').waitFor(LONG);
    const [copy] = await Promise.all([page.waitForEvent('download'), entries.getByRole('button', { name: /^Take it out/ }).click()]);
    expect(JSON.parse(readFileSync(await copy.path(), 'utf8'))).toMatchObject({ found: '"sofa"', entry: { kind: 'sofa', x: 6500 } });
    await entries.waitFor({ state: 'detached' });
    expect(await savedPiece(page, 'pl1')).toMatchObject({ width: 1800 });
    expect(await savedPiece(page, 't5')).toBeUndefined();
    other.destroy();
  }, 120_000);
});
