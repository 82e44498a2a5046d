import { describe, expect, it } from 'vitest';
import { boardName } from '#client/front/boardNames.ts';
import { boardAt } from '#client/front/frontLayout.ts';
import { frontView } from '#client/front/frontView.ts';
import { newBoardAt } from '#client/front/newBoardAt.ts';
import { boardHeight, withBoardAt, withPreview } from '#client/front/preview.ts';
import { inReadingOrder } from '#client/front/readingOrder.ts';
import { toldApart } from '#client/front/toldApart.ts';
import { boardOf, layoutOf, shelfRoom } from './shelf.ts';

const room = shelfRoom([
  ['a', 'top', 0, 300, 1],
  ['b', 'top', 350, 300, 2],
  ['c', 'low', 100, 400, 3],
]);

describe('a shelf from the front', () => {
  const layout = layoutOf(room);

  it('has its boards from the top, between the panels, and the bare top as a place to put things', () => {
    expect(layout.boards.map(({ name, surface, left, width }) => ({ name, surface, left, width }))).toEqual([
      { name: 'On top', surface: 900, left: 0, width: 1400 },
      { name: 'Top', surface: 640, left: 20, width: 1360 },
      { name: 'Middle', surface: 350, left: 20, width: 1360 },
      { name: 'Low', surface: 60, left: 20, width: 1360 },
    ]);
  });

  it('writes free room that keeps the gap', () => {
    expect(boardOf(layout, 'top').free).toEqual([{ x: 700, width: 660 }]);
    expect(boardOf(layout, 'mid').free).toEqual([{ x: 0, width: 1360 }]);
  });

  it.each([
    [700, 660, 'Top'],
    [700, 600, 'Top'],
    [700, 420, 'Middle'],
    [700, 10, 'Low'],
    [700, 905, 'On top'],
  ])('a point at %i, %i means the %s board', (x, z, name) => {
    expect(boardAt(layout, x, z, 90)?.name).toBe(name);
  });

  it('a point beside, under or far above the shelf means no board', () => {
    expect(boardAt(layout, 1500, 300, 90)).toBeNull();
    expect(boardAt(layout, 700, -100, 90)).toBeNull();
    expect(boardAt(layout, 700, 1400, 90)).toBeNull();
  });

  it('keeps a tray without a size, and says that nobody measured it', () => {
    const unmeasured = layoutOf(
      shelfRoom([], {
        materials: [{ id: 'x', name: 'Unmeasured' }],
        placements: [{ material: 'x', piece: 's1', level: 'top', x: 10 }],
      }),
    );
    expect(boardOf(unmeasured, 'top').trays[0]).toMatchObject({ id: 'x', isMeasured: false, width: 200 });
  });

  it('is read along the boards, or down the columns, or from the right', () => {
    const ids = (direction: 'ltr' | 'rtl') => inReadingOrder(layout, direction).map(({ tray }) => tray.id);
    expect(ids('ltr')).toEqual(['a', 'b', 'c']);
    expect(ids('rtl')).toEqual(['b', 'a', 'c']);
    const columns = layoutOf(
      shelfRoom([
        ['a', 'top', 0, 300],
        ['b', 'top', 400, 300],
        ['c', 'low', 20, 300],
      ]),
    );
    const down = { ...columns, piece: { ...columns.piece, reading: 'columns' as const } };
    expect(inReadingOrder(down, 'ltr').map(({ tray }) => tray.id)).toEqual(['a', 'c', 'b']);
  });

  it('shows trays where they would come to stand, and writes nothing', () => {
    const shown = withPreview(layout, { board: 'mid', places: new Map([['a', 500]]) });
    expect(boardOf(shown, 'top').trays.map(({ id }) => id)).toEqual(['b']);
    expect(boardOf(shown, 'mid').trays).toMatchObject([{ id: 'a', x: 500 }]);
    expect(boardOf(layout, 'top').trays.map(({ id }) => id)).toEqual(['a', 'b']);
  });
});

describe('boards that move', () => {
  const layout = layoutOf(room);

  it('keep between their neighbours, in whole centimetres', () => {
    expect(boardHeight(layout, 'mid', 403)).toBe(400);
    expect(boardHeight(layout, 'mid', 900)).toBe(640 - 60 - 20);
    expect(boardHeight(layout, 'mid', 0)).toBe(60 + 60 + 20);
    expect(boardHeight(layout, 'top', 2000)).toBe(900);
    expect(boardOf(withBoardAt(layout, 'mid', 400), 'mid').surface).toBe(400);
  });

  it('a new one comes into the widest free height', () => {
    expect(newBoardAt(layout)).toBe(210);
    expect(newBoardAt({ ...layout, boards: [] })).toBe(60);
  });

  it('are called top, middle and low', () => {
    expect([0, 1, 2].map((i) => boardName(i, 3))).toEqual(['Top', 'Middle', 'Low']);
    expect([0, 1, 2, 3].map((i) => boardName(i, 4))).toEqual(['Top', '2nd', '3rd', 'Low']);
  });
});

describe('the drawing on the screen', () => {
  it('has one scale both ways and fits its space', () => {
    const view = frontView({ width: 605, height: 210, shelf: 1800, top: 860, isMirrored: false });
    expect((view.toX(1000) - view.toX(0)) / 1000).toBeCloseTo(view.scale);
    expect((view.toY(0) - view.toY(500)) / 500).toBeCloseTo(view.scale);
    expect(view.toX(1800)).toBeLessThan(605);
    expect(view.toY(860)).toBeGreaterThanOrEqual(0);
    expect(view.fromX(view.toX(432))).toBeCloseTo(432);
    expect(view.fromY(view.toY(640))).toBeCloseTo(640);
  });

  it('puts staff and names on the other side for a room read from the right; left stays left on the shelf', () => {
    const ltr = frontView({ width: 605, height: 210, shelf: 1800, top: 860, isMirrored: false });
    const rtl = frontView({ width: 605, height: 210, shelf: 1800, top: 860, isMirrored: true });
    expect(ltr.staffAt).toBeLessThan(ltr.toX(0));
    expect(rtl.staffAt).toBeGreaterThan(rtl.toX(1800));
    expect(rtl.toX(0)).toBeLessThan(rtl.toX(1800));
  });
});

describe('names below the trays', () => {
  it('say what tells the trays of a family apart where there is no room for all', () => {
    const insets = [
      'Solid insets: cylinders varying in diameter',
      'Solid insets: cylinders varying in height',
      'Solid insets: cylinders varying in diameter and height',
      'Solid insets: diameter falls as height rises (fourth block)',
    ];
    const inRoom = (letters: number) => insets.map((name) => toldApart(name, insets, (text) => text.length <= letters));
    expect(inRoom(80)).toEqual(insets);
    expect(inRoom(29)[0]).toBe('Cylinders varying in diameter');
    expect(inRoom(20)).toEqual(['Diameter', 'Height', 'Diameter and height', 'Diameter falls as height rises (fourth block)']);
  });

  it('keep a word that alone tells two apart, and leave out what stands in brackets', () => {
    const short = (name: string, others: string[]) => toldApart(name, [name, ...others], (text) => text.length <= 12);
    expect(short('Dressing frame: large buttons', ['Dressing frame: large hooks'])).toBe('Large buttons');
    expect(short('Pink cubes (tower)', [])).toBe('Pink cubes');
    expect(short('Pink cubes (tower)', ['Pink cubes (small)'])).toBe('Pink cubes (tower)');
  });
});
