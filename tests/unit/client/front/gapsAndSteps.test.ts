import { describe, expect, it } from 'vitest';
import { freeRooms, gapsOn, widestRoom } from '#client/front/gaps.ts';
import type { Standing } from '#client/front/makeRoom.ts';
import { spreadLabels } from '#client/front/spreadLabels.ts';
import { stepAlong } from '#client/front/stepAlong.ts';

const tray = (id: string, x: number, width: number): Standing => ({ id, x, width });

describe('free room on a board', () => {
  it('lies between the trays and at both ends', () => {
    expect(gapsOn([tray('b', 600, 200), tray('a', 100, 300)], 1000)).toEqual([
      { x: 0, width: 100, after: null, before: 'a' },
      { x: 400, width: 200, after: 'a', before: 'b' },
      { x: 800, width: 200, after: 'b', before: null },
    ]);
  });

  it('is the whole of an empty board', () => {
    expect(gapsOn([], 900)).toEqual([{ x: 0, width: 900, after: null, before: null }]);
  });

  it('is not counted twice under trays that overlap or hang over', () => {
    expect(gapsOn([tray('a', 0, 500), tray('b', 100, 100), tray('c', 900, 300)], 1000)).toEqual([
      { x: 500, width: 400, after: 'a', before: 'c' },
    ]);
  });

  it('keeps the distance to the neighbours', () => {
    expect(freeRooms([tray('a', 100, 300), tray('b', 480, 200)], 1000, 50)).toEqual([
      { x: 0, width: 50 },
      { x: 730, width: 270 },
    ]);
    expect(widestRoom([tray('a', 100, 300), tray('b', 480, 200)], 1000, 50)).toEqual({ x: 730, width: 270 });
  });
});

describe('sliding a tray by the arrows', () => {
  const board = [tray('a', 0, 200), tray('b', 300, 200), tray('c', 700, 200)];

  it('slides by the step', () => {
    expect(Object.fromEntries(stepAlong(board, 'b', 1000, 10).places)).toEqual({ b: 310 });
  });

  it('stops against its neighbour, then changes places with it', () => {
    expect(Object.fromEntries(stepAlong(board, 'b', 1000, -200).places)).toEqual({ b: 200 });
    const flush = [tray('a', 0, 200), tray('b', 200, 300)];
    const stepped = stepAlong(flush, 'b', 1000, -10);
    expect(Object.fromEntries(stepped.places)).toEqual({ b: 0, a: 300 });
    expect(stepped.changedWith).toBe('a');
  });

  it('changes places without moving anyone else and keeps what lies between', () => {
    const stepped = stepAlong([tray('a', 0, 200), tray('b', 200, 100), tray('c', 900, 100)], 'a', 1000, 100);
    expect(Object.fromEntries(stepped.places)).toEqual({ a: 100, b: 0 });
  });

  it('ends at the end of the board', () => {
    expect(stepAlong([tray('a', 0, 200)], 'a', 1000, -10).places.size).toBe(0);
    expect(Object.fromEntries(stepAlong([tray('a', 750, 200)], 'a', 1000, 100).places)).toEqual({ a: 800 });
  });

  it('gets free of a tray that it overlaps already', () => {
    expect(Object.fromEntries(stepAlong([tray('a', 0, 200), tray('b', 150, 200)], 'b', 1000, 10).places)).toEqual({ b: 160 });
  });
});

describe('labels beside the front', () => {
  it('stay where they are while they have room', () => {
    expect(spreadLabels([20, 100], 12, 0, 200)).toEqual([20, 100]);
  });

  it('move apart in their order, and stay on the drawing', () => {
    const at = spreadLabels([50, 48, 49], 12, 0, 200);
    expect(at).toEqual([72, 48, 60]);
    const low = spreadLabels([195, 196], 12, 0, 200);
    expect(low).toEqual([182, 194]);
  });
});
