import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, type SizeName, screens } from '#tests/support/browser.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { sharedRoom } from '#tests/support/server/sharedRoom.ts';
import { checked, hasFocus, onScreen, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();
/** Where pictures for people to look at go; without it none are made. */
const pictures = process.env.LOWSHELF_PICTURES;

const arrangement = 'Open middle';
const box = (id: string, x: number) =>
  ({ id, name: `${id} box`, kind: 'other', x, y: 2000, width: 2200, depth: 1500, height: 900 }) as const;
/** Two boxes stand across the room before a shelf, 0.60 m apart and each 0.50 m from its wall. */
const acrossTheRoom = plainRoom({
  pieces: [
    box('left', 1600),
    box('right', 4400),
    { id: 's1', kind: 'shelf', x: 3000, y: 4840, rotation: 180, width: 1200, depth: 320, height: 700, anchored: true, locked: true },
  ],
});
const look = (page: Page) => page.getByRole('button', { name: 'Look for a move that widens every way' });
/** Every way, or, where a place that nobody has to go through stays narrow, a way to everything. */
const isWide = /and (every way is wide enough|there is a way wide enough to everything)/;
const proposal = (page: Page) => page.getByRole('region', { name: 'A mend of the ways' });

async function picture(page: Page, name: string): Promise<void> {
  if (pictures) await page.screenshot({ path: `${pictures}/${name}.png` });
}

async function piecesOf(page: Page) {
  const classroom = await savedFile(page);
  const shown = classroom.arrangements.find(({ name }) => name === arrangement) ?? classroom.arrangements[0];
  return shown?.pieces ?? [];
}

async function tableAt(page: Page): Promise<{ x: number; y: number }> {
  const table = (await piecesOf(page)).find(({ id }) => id === 't1');
  if (!table) throw new Error('the demo has a table t1 in its second arrangement');
  return { x: table.x, y: table.y };
}

/** A room of three pieces, opened on its own: the search in the demo takes longer than all else. */
async function smallRoomInTheWay(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'MK', size);
  await page.goto(await sharedRoom(served.server, acrossTheRoom));
  await checked(page);
  return page;
}

/** The demo's second arrangement, with table 1 pushed 0.40 m into the way. */
async function roomInTheWay(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'MK', size);
  await openDemo(page, served.server);
  await page
    .getByRole('radio', { name: arrangement })
    .or(page.getByRole('button', { name: arrangement }))
    .first()
    .click();
  await checked(page);
  const start = await tableAt(page);
  const at = await onScreen(page, start);
  await page.mouse.click(at.x, at.y);
  await page.locator('.plan-paper').focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowDown');
  expect(await tableAt(page)).toEqual({ x: start.x, y: start.y + 400 });
  await checked(page);
  return page;
}

const showPart = async (page: Page, size: SizeName, part: RegExp): Promise<void> => {
  if (size === 'phone') await page.getByRole('button', { name: part }).click();
};

describe('a mend of the ways', () => {
  it.each(screens('wide', 'phone'))(
    'is looked for, stopped, drawn in pencil, done in one step and taken back on a %s screen',
    async (size) => {
      const page = await (size === 'phone' ? smallRoomInTheWay : roomInTheWay)(size);
      const before = await piecesOf(page);
      await showPart(page, size, /^Checks/);
      await look(page).click();
      await proposal(page).getByRole('button', { name: 'Stop' }).click();
      await proposal(page)
        .getByText(/^Stopped\. Nothing was changed\./)
        .waitFor();
      await look(page).click();
      const found = proposal(page).getByText(isWide);
      await found.waitFor({ timeout: 120_000 });
      // Told to who does not see it, and focus is on what was found.
      await expect.poll(() => page.locator('.said').textContent()).toMatch(/^Found: .* towards the \w+ wall/);
      await hasFocus(page.locator('.mend-words'));
      expect(await axeFindings(page)).toEqual([]);
      await picture(page, `mend-first-${size}`);

      // Another one, without what was to move.
      const notThis = proposal(page)
        .getByRole('button', { name: /^Not this piece/ })
        .first();
      const named = ((await notThis.getAttribute('aria-label')) ?? '').replace('Not this piece: ', '');
      await notThis.click();
      await proposal(page)
        .getByRole('button', { name: `Let ${named} move again` })
        .waitFor();
      await found.waitFor({ timeout: 120_000 });
      const moves = async () => (await proposal(page).locator('.mend-moves').textContent())?.toLowerCase();
      await expect.poll(moves, { timeout: 120_000 }).not.toContain(named);
      await picture(page, `mend-second-${size}`);
      await showPart(page, size, /^Drawing/);
      await page.locator('.plan-paper').scrollIntoViewIfNeeded();
      await picture(page, `mend-plan-${size}`);
      await showPart(page, size, /^Checks/);

      await proposal(page).getByRole('button', { name: 'Do it' }).click();
      await page.locator('.said').getByText('Take back undoes it').waitFor();
      const after = await piecesOf(page);
      expect(after).not.toEqual(before);
      const moved = after.filter((piece, i) => piece.x !== before[i]?.x || piece.y !== before[i]?.y);
      expect(moved.map(({ name }) => name)).not.toContain(named);
      await checked(page);
      await expect.poll(() => page.getByText('too narrow between').count()).toBe(0);
      await look(page).waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Take back' }).click();
      expect(await piecesOf(page)).toEqual(before);
      await page.context().close();
    },
    300_000,
  );
});
