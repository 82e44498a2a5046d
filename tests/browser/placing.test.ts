import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Piece } from '#model/schema/types.ts';
import { axeFindings, type SizeName } from '#tests/support/browser.ts';
import { onePage } from '#tests/support/onePage.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { onScreen, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();
/** Where pictures for people to look at go; without it none are made. */
const pictures = process.env.LOWSHELF_PICTURES;

type Place = { x: number; y: number };
/** Tables 2, 3 and 4 of the demo room and the letter shelf stand in it, and their middles nothing else's. */
const AREA: readonly [Place, Place] = [
  { x: 1700, y: 1300 },
  { x: 5500, y: 4900 },
];

async function demo(size: SizeName): Promise<Page> {
  const page = await pageOf(served.browser, 'AX', size);
  await openDemo(page, served.server);
  return page;
}

const shared = onePage(() => demo('wide'));

async function pieces(page: Page): Promise<Map<string, Piece>> {
  const classroom = await savedFile(page);
  const shown = classroom.arrangements.find(({ id }) => id === classroom.current);
  return new Map(shown?.pieces.map((piece) => [piece.id, piece]));
}

async function drag(page: Page, from: Place, to: Place): Promise<void> {
  const a = await onScreen(page, from);
  const b = await onScreen(page, to);
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  for (let step = 1; step <= 8; step++) await page.mouse.move(a.x + ((b.x - a.x) * step) / 8, a.y + ((b.y - a.y) * step) / 8);
}

/** One finger from place to place. */
async function slideFinger(page: Page, from: Place, to: Place): Promise<void> {
  const a = await onScreen(page, from);
  const b = await onScreen(page, to);
  const touch = await page.context().newCDPSession(page);
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [a] });
  for (let step = 1; step <= 8; step++) {
    const at = { x: a.x + ((b.x - a.x) * step) / 8, y: a.y + ((b.y - a.y) * step) / 8 };
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [at] });
  }
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await touch.detach();
}

/** Two fingers from one distance (px) to another, and on by as much to the right as they move apart. */
async function pinch(page: Page, from: number, to: number): Promise<void> {
  const box = await page.locator('.plan-paper').boundingBox();
  if (!box) throw new Error('the plan is not drawn');
  const touch = await page.context().newCDPSession(page);
  const fingers = (apart: number): Place[] => {
    const middle = { x: box.x + box.width / 2 + apart - from, y: box.y + box.height / 2 };
    return [-0.5, 0.5].map((side) => ({ x: middle.x + side * apart, y: middle.y }));
  };
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(from) });
  for (let step = 1; step <= 8; step++)
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(from + ((to - from) * step) / 8) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await touch.detach();
}

describe('several things with the mouse', () => {
  it('are chosen by an area, dragged as one with their rest said, and taken back in one step', async () => {
    const page = await shared();
    const before = await pieces(page);
    await page.keyboard.down('Shift');
    await drag(page, ...AREA);
    if (pictures) await page.screenshot({ path: `${pictures}/placing-area.png` });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    await page.getByRole('group', { name: 'Verbs of 4 things' }).first().waitFor();
    await drag(page, { x: 3100, y: 3900 }, { x: 3100, y: 4300 });
    await page.mouse.up();
    const after = await pieces(page);
    const moved = [...after.values()].filter(({ id, x, y }) => x !== before.get(id)?.x || y !== before.get(id)?.y).map(({ id }) => id);
    expect(moved.sort()).toEqual(['la1', 't2', 't3', 't4']);
    const by = ['la1', 't2', 't3', 't4'].map((id) => Math.round((after.get(id)?.y ?? 0) - (before.get(id)?.y ?? 0)));
    expect(new Set(by).size).toBe(1);
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByRole('button', { name: 'Do again' }).waitFor();
    expect([...(await pieces(page)).values()]).toEqual([...before.values()]);

    // One thing brought near a wall comes to rest at it and says so.
    await page.keyboard.press('Escape');
    await drag(page, { x: 6500, y: 3900 }, { x: 6500, y: 4800 });
    await page.locator('.plan-paper[data-rest^="Flush with the south wall"]').waitFor();
    if (pictures) await page.screenshot({ path: `${pictures}/placing-rest.png` });
    await page.mouse.up();
    await page.getByRole('status').filter({ hasText: 'Flush with the south wall' }).waitFor();
    expect((await pieces(page)).get('t5')?.y).toBe(4900);
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.locator('.plan-paper').focus();
    await page.keyboard.press('Escape');
    await page
      .getByRole('group', { name: /^Verbs of/ })
      .first()
      .waitFor({ state: 'detached' });
  }, 180_000);
});

describe('several things by the keyboard alone', () => {
  it('are gathered, set in a row, measured between', async () => {
    const page = await shared();
    const { keyboard } = page;
    await page.locator('.plan-paper').focus();
    await keyboard.press('v');
    // The first two shelves of the list.
    for (const key of ['Tab', 'Enter', 'Tab', 'Enter']) await keyboard.press(key);
    await page.getByRole('status').filter({ hasText: '2 chosen' }).waitFor();
    await keyboard.press('Escape');
    await page.getByRole('status').filter({ hasText: '2 things: shelf 1 and shelf 2' }).waitFor();
    await keyboard.press('o');
    await page.getByRole('status').filter({ hasText: '2 things in a row with shelf 1, 3.40 m long.' }).waitFor();
    const row = await pieces(page);
    const [first, second] = [row.get('pl1'), row.get('pl2')];
    expect(second?.rotation).toBe(first?.rotation);
    expect(Math.abs((second?.y ?? 0) - (first?.y ?? 0))).toBeCloseTo(1700, 3);
    await page.locator('.plan-paper').focus();
    await keyboard.press('Control+z');
    expect((await pieces(page)).get('pl2')).toMatchObject({ x: 4100, y: 7400, rotation: 180 });

    await page.locator('.plan-paper').focus();
    await keyboard.press('r');
    for (const key of ['Tab', 'Enter', 'Tab', 'Tab', 'Enter']) await keyboard.press(key);
    const said = page.locator('.tape-says');
    await said.filter({ hasText: /from edge to edge, between shelf 1 and shelf 3/ }).waitFor();
    await said.filter({ hasText: /Walking from one end to the other, the narrowest place is .* m wide: at [A-I]\d/ }).waitFor();
    // The words lie beside the drawing, not on it.
    const [words, drawing] = [await page.locator('.draft-line').boundingBox(), await page.locator('.plan-paper').boundingBox()];
    expect(words?.x).toBeGreaterThanOrEqual((drawing?.x ?? 0) + (drawing?.width ?? 0) - 1);
    if (pictures) await page.screenshot({ path: `${pictures}/placing-tape.png` });
  }, 180_000);
});

describe('several things by touch on a tablet', () => {
  it('are drawn round with one finger, slid, ticked in the list, put away', async () => {
    const page = await demo('tablet');
    const before = await pieces(page);
    const paper = page.locator('.plan-paper');
    const asItLay = await paper.getAttribute('data-view');
    await page.getByRole('button', { name: 'Several', exact: true }).tap();
    // What the tool asks lies below the drawing, which keeps its scale and place.
    const [words, drawing] = [await page.locator('.draft-line').boundingBox(), await paper.boundingBox()];
    expect(words?.y).toBeGreaterThanOrEqual((drawing?.y ?? 0) + (drawing?.height ?? 0) - 1);
    expect(await paper.getAttribute('data-view')).toBe(asItLay);
    await slideFinger(page, ...AREA);
    const verbs = page.getByRole('group', { name: 'Verbs of 4 things' }).first();
    await verbs.waitFor();
    const evenly = verbs.getByRole('button', { name: 'Evenly' });
    expect((await evenly.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await slideFinger(page, { x: 3100, y: 3900 }, { x: 3100, y: 4200 });
    expect((await pieces(page)).get('t3')?.y).not.toBe(before.get('t3')?.y);
    await page.getByRole('button', { name: 'Take back' }).tap();
    await page.getByRole('button', { name: 'Shelves', exact: true }).tap();
    await page.getByRole('button', { name: 'Choose several' }).tap();
    await page.getByRole('button', { name: 'Choose Shelf 10' }).tap();
    await page.getByRole('button', { name: 'Done ticking' }).tap();
    await page.getByRole('group', { name: 'Verbs of 3 things' }).first().waitFor();
    if (pictures) await page.screenshot({ path: `${pictures}/placing-tablet.png` });
    await page.getByRole('group', { name: 'Verbs of 3 things' }).first().getByRole('button', { name: 'Put away' }).tap();
    const ids = [...(await pieces(page)).keys()];
    expect(ids).toContain('la1');
    expect(ids.filter((id) => ['t2', 't3', 't4'].includes(id))).toEqual([]);
    await page.getByRole('button', { name: 'Take back' }).tap();
    await page.getByRole('button', { name: 'Do again' }).waitFor();
    expect([...(await pieces(page)).values()]).toEqual([...before.values()]);
    expect(await axeFindings(page)).toEqual([]);

    // Two fingers move the paper and what they stand on stays where it is on it.
    const sizeNow = async (): Promise<number> => Number((await paper.getAttribute('data-view'))?.split(' ')[0]);
    const size = await sizeNow();
    await pinch(page, 100, 200);
    await expect.poll(sizeNow).toBeGreaterThan(1.8 * size);
    expect([...(await pieces(page)).values()]).toEqual([...before.values()]);
    await pinch(page, 200, 100);
    await expect.poll(async () => (await sizeNow()) / size).toBeCloseTo(1, 1);
    await page.context().close();
  }, 180_000);
});
