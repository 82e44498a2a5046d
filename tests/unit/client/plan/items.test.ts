import { describe, expect, it } from 'vitest';
import { areaInName, areasOfShelves } from '#client/plan/areas.ts';
import { handleAt, handlesOf, resized, turnedTowards } from '#client/plan/handles.ts';
import { itemsInOrder, nextItem, piecesInOrder } from '#client/plan/items.ts';
import { boardsFor } from '#client/plan/newThings.ts';
import { nextNumber } from '#client/plan/numbers.ts';
import { itemAt } from '#client/plan/pick.ts';
import { fitRoom, keepInSight, pinch, toPlan, toScreen, zoomAbout } from '#client/plan/viewport.ts';
import { pieceBody } from '#model/scene/bodies.ts';
import { pieceNumbers } from '#model/schema/pieceNumbers.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const shelfAt = (id: string, name = '') => ({ id, name, kind: 'shelf' as const, x: 1000, y: 1000, width: 1200, depth: 320 });

const arrangementOf = (room: ReturnType<typeof plainRoom>) => {
  const [arrangement] = room.arrangements;
  if (!arrangement) throw new Error('no arrangement');
  return arrangement;
};

describe('numbers', () => {
  it('keeps the number in a name or a short id, and gives the free ones to the rest', () => {
    const room = plainRoom({ pieces: [shelfAt('x-9f'), shelfAt('s1'), shelfAt('q', 'Shelf 3'), { ...shelfAt('t9'), kind: 'table' }] });
    expect(Object.fromEntries(pieceNumbers(room))).toEqual({ 'x-9f': '2', s1: '1', q: '3', t9: 'T9' });
    expect(nextNumber(room, 'shelf')).toBe(4);
  });

  it('gives no number twice', () => {
    const room = plainRoom({ pieces: [shelfAt('s2'), shelfAt('a', 'Shelf 2'), shelfAt('b', '2 Tens')] });
    expect([...pieceNumbers(room).values()].sort()).toEqual(['1', '2', '3']);
  });
});

describe('areas', () => {
  it('is that of most trays, else read from the name; art apart from culture', () => {
    const materials = [
      { id: 'm1', name: 'a', area: 'culture', strand: 'art' },
      { id: 'm2', name: 'b', area: 'culture', strand: 'art' },
      { id: 'm3', name: 'c', area: 'culture', strand: 'botany' },
    ];
    const room = plainRoom({
      materials,
      pieces: [shelfAt('s1'), shelfAt('s2', 'Sensorial A'), shelfAt('s3', 'Oak')],
      placements: materials.map((m, i) => ({ material: m.id, piece: 's1', x: i * 100 })),
    });
    const areas = areasOfShelves(arrangementOf(room), room.materials);
    expect(areas.get('s1')).toEqual({ area: 'culture', strand: 'art' });
    expect(areas.get('s2')?.area).toBe('sensorial');
    expect(areas.has('s3')).toBe(false);
    expect(areaInName('Letter sounds')?.area).toBe('language');
  });
});

describe('order of Tab and lists', () => {
  const room = plainRoom({ pieces: [{ ...shelfAt('t1'), kind: 'table' }, shelfAt('s2'), shelfAt('s1')] });

  it('goes through shelves by number, tables, doors, walls', () => {
    expect(piecesInOrder(arrangementOf(room), room).map((p) => p.id)).toEqual(['s1', 's2', 't1']);
    const items = itemsInOrder(arrangementOf(room), room);
    expect(items.map((item) => item.id)).toEqual(['s1', 's2', 't1', 'd1', 'c1', 'c2', 'c3', 'c4']);
    expect(nextItem(items, null, 1)?.id).toBe('s1');
    expect(nextItem(items, { kind: 'piece', id: 's2' }, 1)?.id).toBe('t1');
    expect(nextItem(items, { kind: 'wall', id: 'c4' }, 1)).toBeNull();
    expect(nextItem(items, { kind: 'piece', id: 's1' }, -1)).toBeNull();
  });
});

describe('what is under a finger', () => {
  const room = plainRoom({
    pieces: [
      { id: 'r', kind: 'rug', x: 3000, y: 2500, width: 3000, depth: 2000 },
      { id: 't', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600 },
      { id: 'c', kind: 'seat', x: 3000, y: 2700, width: 300, depth: 300 },
    ],
  });
  const at = (x: number, y: number, reach = 0) => itemAt({ x, y }, arrangementOf(room), room.room, reach)?.id;

  it('is the smallest thing, and a rug only where nothing else lies', () => {
    expect([at(3000, 2700), at(2700, 2500), at(2000, 2000)]).toEqual(['c', 't', 'r']);
  });

  it('may be missed by a finger’s breadth', () => {
    expect([at(3000, 1440), at(3000, 1440, 100)]).toEqual([undefined, 'r']);
  });

  it('is a door before its wall, a corner before both walls', () => {
    expect([at(800, -80), at(3000, -80), at(10, -10)]).toEqual(['d1', 'c1', 'c1']);
    expect(itemAt({ x: 10, y: -10 }, arrangementOf(room), room.room, 0)?.kind).toBe('corner');
  });
});

describe('handles', () => {
  const body = pieceBody({ ...plainPiece(), x: 1000, y: 1000, rotation: 90 });
  const view = { k: 0.1, x: 0, y: 0 };

  it('stand at the ends; front and back only where there is room', () => {
    expect(handlesOf(body, view).map((h) => h.what)).toEqual(['left', 'right', 'turn']);
    expect(handlesOf(body, { ...view, k: 0.3 }).map((h) => h.what)).toEqual(['left', 'right', 'front', 'back', 'turn']);
    expect(handleAt(handlesOf(body, view), { x: 100, y: 180 }, 22)?.what).toBe('right');
  });

  it('leave a finger 44 px of a small thing to slide it by, and stand on the edges of a large one', () => {
    const room = (b: typeof body, k: number, isTouch: boolean, one: string, other: string): number => {
      const places = handlesOf(b, { ...view, k }, [], isTouch);
      const [p, q] = [one, other].map((side) => places.find((h) => h.what === side)?.at);
      if (!p || !q) throw new Error('there are handles on both sides');
      return Math.round(Math.hypot(p.x - q.x, p.y - q.y));
    };
    const table = pieceBody({ ...plainPiece(), width: 1200, depth: 1000, x: 1000, y: 1000 });
    // 22 px of each ring count away: 66 between their middles is 44 free; 1.20 m at 0.053 px to the mm is 64 px.
    expect([room(table, 0.053, true, 'left', 'right'), room(table, 0.053, true, 'front', 'back')]).toEqual([66, 66]);
    expect(room(table, 0.02, true, 'left', 'right')).toBe(66);
    expect(room(table, 0.1, true, 'left', 'right')).toBe(120);
    expect(room(table, 0.053, false, 'left', 'right')).toBe(64);
  });

  it('do not lie on each other: the one to turn by stands beyond the one at the front', () => {
    const table = pieceBody({ ...plainPiece(), width: 1200, depth: 1000, x: 1000, y: 1000 });
    const places = handlesOf(table, { ...view, k: 0.053 }, [], true);
    const [turn, front] = ['turn', 'front'].map((what) => places.find((h) => h.what === what)?.at);
    expect(Math.hypot((turn?.x ?? 0) - (front?.x ?? 0), (turn?.y ?? 0) - (front?.y ?? 0))).toBeGreaterThanOrEqual(22);
  });

  it('leave the words of other things to be read: the one to turn by stands nearer or farther', () => {
    const turn = (words: Parameters<typeof handlesOf>[2]) => handlesOf(body, view, words).find((h) => h.what === 'turn')?.at;
    const usual = turn([]);
    if (!usual) throw new Error('there is a handle to turn by');
    // Turned by 90 the front looks to the left.
    expect(turn([{ at: usual, radius: 9 }])).toEqual({ x: usual.x - 24, y: usual.y });
    expect(turn([{ at: { x: usual.x - 14, y: usual.y }, radius: 9 }])).toEqual({ x: usual.x + 8, y: usual.y });
    expect(turn([{ at: usual, radius: 200 }])).toEqual(usual);
  });

  it('hold the opposite side still, to whole centimetres, never to nothing', () => {
    const box = { x: 1000, y: 1000, width: 1200, depth: 320, rotation: 90 };
    // Turned by 90 the right end points down.
    expect(resized(box, 'right', { x: 1000, y: 1804 })).toEqual({ x: 1000, y: 1100, width: 1400, depth: 320 });
    expect(resized(box, 'left', { x: 1000, y: 5000 }).width).toBe(100);
  });

  it('turn the front to the pointer', () => {
    expect([turnedTowards({ x: 0, y: 0 }, { x: 0, y: 10 }, false), turnedTowards({ x: 0, y: 0 }, { x: -10, y: 1 }, false)]).toEqual([
      0, 90,
    ]);
    expect(turnedTowards({ x: 0, y: 0 }, { x: -10, y: 1 }, true)).toBe(84);
  });
});

function plainPiece() {
  const [piece] = arrangementOf(plainRoom({ pieces: [shelfAt('s1')] })).pieces;
  if (!piece) throw new Error('no piece');
  return piece;
}

describe('the paper', () => {
  const bounds = { minX: 0, minY: 0, maxX: 8000, maxY: 5000 };
  const size = { width: 600, height: 500 };
  const margins = { top: 50, right: 50, bottom: 50, left: 50 };

  it('shows the whole room in any box', () => {
    for (const [width, height] of [
      [390, 400],
      [600, 500],
      [2000, 300],
    ] as const) {
      const view = fitRoom(bounds, { width, height }, margins);
      const a = toScreen(view, { x: 0, y: 0 });
      const b = toScreen(view, { x: 8000, y: 5000 });
      expect([a.x >= 50, a.y >= 50, b.x <= width - 50, b.y <= height - 50]).toEqual([true, true, true, true]);
    }
  });

  it('enlarges about the pointer', () => {
    const view = fitRoom(bounds, size, margins);
    const at = { x: 210, y: 130 };
    const before = toPlan(view, at);
    const after = toPlan(zoomAbout(view, at, 1.7), at);
    expect(after.x).toBeCloseTo(before.x, 6);
    expect(after.y).toBeCloseTo(before.y, 6);
  });

  it('keeps what lies under two fingers under them', () => {
    const view = fitRoom(bounds, size, margins);
    const from = [
      { x: 100, y: 100 },
      { x: 200, y: 100 },
    ] as const;
    const to = [
      { x: 80, y: 150 },
      { x: 280, y: 150 },
    ] as const;
    const moved = pinch(view, from, to);
    const before = toPlan(view, from[0]);
    const after = toPlan(moved, to[0]);
    expect(moved.k / view.k).toBeCloseTo(2, 6);
    expect(after.x).toBeCloseTo(before.x, 6);
    expect(after.y).toBeCloseTo(before.y, 6);
  });

  it('cannot be pushed out of sight', () => {
    const lost = { k: 0.06, x: 99_999, y: -99_999 };
    const kept = keepInSight(lost, bounds, size);
    expect(toScreen(kept, { x: 0, y: 0 }).x).toBeLessThanOrEqual(size.width - 80);
    expect(toScreen(kept, { x: 0, y: 5000 }).y).toBeGreaterThanOrEqual(80);
  });
});

describe('a new shelf', () => {
  it('has boards at 640, 350 and 60 in 700, and fewer when it is low', () => {
    expect(boardsFor(700).map((l) => l.surface)).toEqual([640, 350, 60]);
    expect(boardsFor(300).map((l) => l.surface)).toEqual([240, 60]);
    expect(boardsFor(100).map((l) => l.surface)).toEqual([40]);
  });
});
