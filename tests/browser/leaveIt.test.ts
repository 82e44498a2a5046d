import { describe, expect, it } from 'vitest';
import { RunningAnalysis } from '#model/analysis/running.ts';
import { rules } from '#model/rules/registry.ts';
import { servedPages } from '#tests/support/servedPages.ts';
import { checked, hasFocus, onScreen, openDemo, pageOf, savedFile } from '#tests/support/sheetPage.ts';

const served = servedPages();

describe('a finding left as it is', () => {
  it('is kept with its reason, told of in the other arrangement, and says when it no longer does anything', async () => {
    const page = await pageOf(served.browser, 'MK');
    await openDemo(page, served.server);
    const classroom = await savedFile(page);
    const rule = rules.find(({ id }) => id === 'survey/outside');
    const found = rule && new RunningAnalysis().moveTo(classroom, classroom.current).judge(rule).findings;
    const outside = found?.find(({ fix }) => fix);
    const move = outside?.fix?.edits[0];
    if (!outside || move?.do !== 'move-piece') throw new Error('something in the demo stands through a wall');

    await page.locator('.finding-head').filter({ hasText: 'through the wall' }).first().click();
    await page.locator('.finding.shown').getByRole('button', { name: 'Leave it' }).click();
    await page.getByLabel('Why is it left as it is?').fill('the niche is not drawn yet');
    await page.locator('.leave-form').getByRole('button', { name: 'Leave it' }).click();
    const left = page.getByRole('region', { name: 'Left as they are' });
    await left.getByText('the niche is not drawn yet').waitFor();
    await left.getByText(/^Left by Person MK on /).waitFor();
    // The line at the top of the column leads down to it.
    await page.getByRole('button', { name: '1 left as it is' }).click();
    await hasFocus(page.locator('#left-title'));
    await expect.poll(() => left.evaluate((part) => part.getBoundingClientRect().top < innerHeight)).toBe(true);
    expect((await savedFile(page)).left).toMatchObject([{ key: outside.key, reason: 'the niche is not drawn yet', by: 'Person MK' }]);

    await page.getByRole('button', { name: 'Open middle' }).first().click();
    await checked(page);
    await left.getByText('The checks do not find it in this arrangement, but in another.').waitFor();
    await page.getByRole('button', { name: 'As it stands' }).first().click();
    await checked(page);

    const piece = classroom.arrangements.find(({ id }) => id === classroom.current)?.pieces.find(({ id }) => id === move.piece);
    if (!piece) throw new Error('the piece is in the arrangement that stands');
    const at = await onScreen(page, piece);
    await page.mouse.click(at.x, at.y);
    await page.locator('.plan-paper').focus();
    const press = async (key: string, by: number): Promise<void> => {
      for (let i = 0; i < Math.ceil(by / 50); i++) await page.keyboard.press(key);
    };
    await press(move.x > piece.x ? 'ArrowRight' : 'ArrowLeft', Math.abs(move.x - piece.x));
    await press(move.y > piece.y ? 'ArrowDown' : 'ArrowUp', Math.abs(move.y - piece.y));
    await checked(page);
    await left.getByText('This no longer does anything: take it away.').waitFor();
    await left.getByRole('button', { name: /^Take it away/ }).click();
    await left.waitFor({ state: 'detached' });
    expect((await savedFile(page)).left).toEqual([]);
    await page.context().close();
  }, 180_000);
});
