import { describe, expect, it } from 'vitest';
import { gapMark } from '#client/front/belongs.ts';
import { firstFit } from '#client/front/firstFit.ts';
import { keyMeaning } from '#client/front/frontKeys.ts';
import { trayDrop } from '#client/front/trayDrop.ts';
import { placeEdits } from '#client/front/trayEdits.ts';
import { applyEdits } from '#model/findings/applyEdits.ts';
import { layoutOf, shelfRoom, trayOf } from './shelf.ts';

const scene = shelfRoom([
  ['a', 'top', 0, 300, 1],
  ['b', 'top', 350, 300, 2],
  ['c', 'mid', 100, 400, 3],
]);
const layout = layoutOf(scene);
const press = (chosen: string | null, key: string, shift = false) => keyMeaning(layout, chosen, { key, shift }, 50, 'ltr');

describe('keys on the front', () => {
  it('Tab goes through the trays as they are read, and out after the last', () => {
    expect(press(null, 'Tab')).toEqual({ does: 'choose', id: 'a' });
    expect(press('a', 'Tab')).toEqual({ does: 'choose', id: 'b' });
    expect(press('b', 'Tab')).toEqual({ does: 'choose', id: 'c' });
    expect(press('c', 'Tab')).toBeNull();
    expect(press('c', 'Tab', true)).toEqual({ does: 'choose', id: 'b' });
    expect(press('a', 'Tab', true)).toBeNull();
  });

  it('arrows slide by 10 mm, with Shift by 100', () => {
    const small = press('c', 'ArrowRight');
    expect(small?.does === 'stand' && Object.fromEntries(small.places)).toEqual({ c: 110 });
    const large = press('c', 'ArrowRight', true);
    expect(large?.does === 'stand' && Object.fromEntries(large.places)).toEqual({ c: 200 });
  });

  it('up and down go to the next board, and say where it ends', () => {
    const down = press('c', 'ArrowDown');
    expect(down?.does === 'stand' && down.board.name).toBe('Low');
    expect(keyMeaning(layout, 'a', { key: 'ArrowUp', shift: false }, 50, 'ltr')).toMatchObject({
      does: 'stand',
      board: { name: 'On top' },
    });
    const low = layoutOf(shelfRoom([['z', 'low', 0, 100]]));
    expect(keyMeaning(low, 'z', { key: 'ArrowDown', shift: false }, 50, 'ltr')).toMatchObject({ does: 'nothing' });
  });

  it('Delete puts away, Esc lets go, letters mean nothing here', () => {
    expect(press('a', 'Delete')).toEqual({ does: 'put away' });
    expect(press('a', 'Escape')).toEqual({ does: 'let go' });
    expect(press('a', 'x')).toBeNull();
    expect(press(null, 'ArrowLeft')).toBeNull();
  });
});

describe('dragging a tray', () => {
  it('to another board slides the others there along and changes nothing else', () => {
    const drop = trayDrop(layout, trayOf(layout, 'c'), 20 + 250, 660, 50, 10);
    expect(drop?.board.key).toBe('top');
    const edits = placeEdits(scene.arrangement, { piece: 's1', side: 'front', level: 'top' }, drop?.places ?? new Map());
    const after = applyEdits(scene.classroom, 'a1', edits).arrangements[0];
    const where = Object.fromEntries((after?.placements ?? []).map((p) => [p.material, [p.level, p.x]]));
    expect(where).toEqual({ a: ['top', 0], c: ['top', 350], b: ['top', 800] });
  });

  it('beside the shelf means no board', () => {
    expect(trayDrop(layout, trayOf(layout, 'c'), 1800, 300, 50, 10)).toBeNull();
  });

  it('keeps how far back a tray stands only on its own board', () => {
    const moved = {
      ...scene.arrangement,
      placements: scene.arrangement.placements.map((p) => (p.material === 'a' ? { ...p, y: 30, turned: true } : p)),
    };
    const here = placeEdits(moved, { piece: 's1', side: 'front', level: 'top' }, new Map([['a', 12.3456]]))[0];
    const there = placeEdits(moved, { piece: 's1', side: 'front', level: 'low' }, new Map([['a', 0]]))[0];
    expect(here).toMatchObject({ placement: { x: 12.35, y: 30, turned: true } });
    expect(there).toMatchObject({ placement: { y: 0, turned: true, level: 'low' } });
  });
});

describe("a shelf that is not the children's", () => {
  it('takes a tray in the first gap from the top', () => {
    const found = firstFit(layout, 'new', 200, 50);
    expect(found?.board.key).toBe('top');
    expect(Object.fromEntries(found?.places ?? [])).toEqual({ new: 700 });
  });

  it('else where the others can slide along; else nowhere', () => {
    const full = layoutOf(
      shelfRoom([
        ['a', 'top', 100, 1100],
        ['b', 'mid', 0, 1360],
        ['c', 'low', 0, 1360],
      ]),
    );
    expect(Object.fromEntries(firstFit(full, 'new', 180, 50)?.places ?? [])).toEqual({ a: 30, new: 1180 });
    expect(firstFit(full, 'new', 400, 50)).toBeNull();
  });
});

describe('where a misplaced tray belongs', () => {
  const moves = new Map([['c', { piece: 's1', side: 'front' as const, level: 'top', x: 310 }]]);

  it('is a gap between those that stay, and its place once it is there', () => {
    const mark = gapMark(layout, 'c', moves, 'ltr');
    expect(mark?.board.key).toBe('top');
    expect(mark?.place).toBe(2);
    expect(mark?.x).toBeGreaterThanOrEqual(300);
    expect(mark?.x).toBeLessThanOrEqual(350 + 200);
  });

  it('counts from the right where the room is read from the right', () => {
    const first = new Map([['c', { piece: 's1', side: 'front' as const, level: 'top', x: 900 }]]);
    expect(gapMark(layout, 'c', first, 'rtl')?.place).toBe(1);
    expect(gapMark(layout, 'c', first, 'ltr')?.place).toBe(3);
  });

  it('is not on this front when it belongs to another shelf, or nowhere yet', () => {
    expect(gapMark(layout, 'c', new Map([['c', { piece: 's2', side: 'front' as const, level: null, x: 0 }]]), 'ltr')).toBeNull();
    expect(gapMark(layout, 'c', new Map([['c', null]]), 'ltr')).toBeNull();
  });
});
