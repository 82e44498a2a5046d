import { describe, expect, it } from 'vitest';
import type { Standing } from '#client/front/makeRoom.ts';
import { dropOnBoard, onBoard, overlaps, snapTray } from '#client/front/snap.ts';

const tray = (id: string, x: number, width: number): Standing => ({ id, x, width });
const others = [tray('a', 100, 300), tray('b', 800, 300)];

describe('where a tray catches', () => {
  it.each([
    ['with room for the hands where it was let go flush to its neighbour', 405, { x: 450, to: 'gap', beside: 'a' }],
    ['so also where it was let go a little over it', 392, { x: 450, to: 'gap', beside: 'a' }],
    ['so also nearer than that', 430, { x: 450, to: 'gap', beside: 'a' }],
    ['so also on its other side', 585, { x: 550, to: 'gap', beside: 'b' }],
    ['at the gap of the class', 455, { x: 450, to: 'gap', beside: 'a' }],
    ['at the gap before the next', 545, { x: 550, to: 'gap', beside: 'b' }],
    ['at the right end', 1592, { x: 1600, to: 'end', beside: null }],
  ])('%s', (_, x, caught) => {
    expect(snapTray(others, tray('new', x, 200), 1800, 50, 12)).toEqual(caught);
  });

  it('comes to stand on 5 mm where nothing is near', () => {
    expect(snapTray(others, tray('new', 1321.4, 200), 1800, 50, 12)).toEqual({ x: 1320, to: null, beside: null });
  });

  it('catches flush where there is no room for the hands', () => {
    const close = [tray('a', 0, 300), tray('b', 520, 300)];
    expect(snapTray(close, tray('new', 305, 200), 1000, 50, 12)).toEqual({ x: 300, to: 'flush', beside: 'a' });
  });

  it('never catches where it would overlap', () => {
    const tight = [tray('a', 0, 300), tray('b', 380, 300)];
    const caught = snapTray(tight, tray('new', 305, 200), 1000, 50, 12);
    expect(caught.to).toBeNull();
  });

  it('does not catch on itself', () => {
    expect(snapTray([...others, tray('new', 450, 200)], tray('new', 655, 200), 1800, 50, 12).beside).toBeNull();
  });

  it('keeps a tray on its board', () => {
    expect(onBoard(-40, 200, 1000)).toBe(0);
    expect(onBoard(990, 200, 1000)).toBe(800);
    expect(onBoard(50, 1200, 1000)).toBe(0);
  });

  it('calls touching edges no overlap', () => {
    expect(overlaps({ x: 0, width: 100 }, { x: 100, width: 50 })).toBe(false);
    expect(overlaps({ x: 0, width: 101 }, { x: 100, width: 50 })).toBe(true);
  });
});

describe('letting a tray go on a board', () => {
  it('moves only itself where it is free', () => {
    const dropped = dropOnBoard(others, tray('new', 455, 200), 1800, 50, 12);
    expect(Object.fromEntries(dropped.places)).toEqual({ new: 450 });
    expect(dropped.shortBy).toBe(0);
  });

  it('slides the others along where it is not', () => {
    const dropped = dropOnBoard(others, tray('new', 780, 200), 1800, 50, 12);
    expect(Object.fromEntries(dropped.places)).toEqual({ new: 780, b: 1030 });
  });

  it('puts it down all the same on a board that is too short, and says by how much', () => {
    const full = [tray('a', 0, 500), tray('b', 500, 500)];
    const dropped = dropOnBoard(full, tray('new', 300, 200), 1000, 50, 0);
    expect(Object.fromEntries(dropped.places)).toEqual({ new: 300 });
    expect(dropped.shortBy).toBe(200);
  });
});
