import { describe, expect, it } from 'vitest';
import { area, boundingBox } from '#model/geometry/polygon.ts';
import { measureSeats, SEATED_DEPTH, seatStrips, stripAt } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

type Pieces = NonNullable<PlainRoomChange['pieces']>;
const sceneOf = (pieces: Pieces) => buildScene(plainRoom({ pieces }));
const table: Pieces[number] = { id: 't1', kind: 'table', x: 3000, y: 2500, width: 1200, depth: 600 };
const seat = (id: string, x: number, y: number, of: string | null = 't1'): Pieces[number] => ({
  id,
  kind: 'seat',
  x,
  y,
  width: 320,
  depth: 320,
  height: 300,
  table: of,
});

describe('seats of a table', () => {
  it('takes what the sides say when no seat piece names the table', () => {
    expect(measureSeats(sceneOf([{ ...table, seatSides: { front: 2, back: 1 } }])).total).toBe(3);
  });
  it('takes the larger of the sides and the seat pieces, never their sum', () => {
    const two = [seat('k1', 2800, 2900), seat('k2', 3200, 2900)];
    expect(measureSeats(sceneOf([{ ...table, seatSides: { front: 3 } }, ...two])).total).toBe(3);
    expect(measureSeats(sceneOf([{ ...table, seatSides: { front: 1 } }, ...two])).total).toBe(2);
  });
  it('counts a seat of no table, and one whose table is gone or is no table', () => {
    const measured = measureSeats(sceneOf([table, seat('k1', 500, 500, null), seat('k2', 900, 500, 'gone'), seat('k3', 1300, 500, 'k1')]));
    expect(measured.free.map((f) => f.id)).toEqual(['k1', 'k2', 'k3']);
    expect(measured.total).toBe(3);
    expect(measured.tables.map((t) => t.seats)).toEqual([0]);
  });
});

describe('seat strips', () => {
  it('lie 483 mm deep along each seated side (19 in, row B11)', () => {
    const strips = seatStrips(sceneOf([{ ...table, seatSides: { front: 2, left: 1 } }]));
    expect(strips.map((s) => s.side)).toEqual(['front', 'left']);
    expect(boundingBox(strips[0]?.strip ?? [])).toEqual({ minX: 2400, maxX: 3600, minY: 2800, maxY: 2800 + SEATED_DEPTH });
    expect(boundingBox(strips[1]?.strip ?? [])).toEqual({ minX: 2400 - SEATED_DEPTH, maxX: 2400, minY: 2200, maxY: 2800 });
    expect(SEATED_DEPTH).toBe(483);
  });
  it('turn with the table', () => {
    const [strip] = seatStrips(sceneOf([{ ...table, rotation: 90, seatSides: { front: 2 } }]));
    expect(boundingBox(strip?.strip ?? [])).toEqual({ minX: 2700 - SEATED_DEPTH, maxX: 2700, minY: 1900, maxY: 3100 });
  });
  it('keep their area at any turn', () => {
    const [strip] = seatStrips(sceneOf([{ ...table, rotation: 33, seatSides: { right: 1 } }]));
    expect(area(strip?.strip ?? [])).toBeCloseTo(600 * SEATED_DEPTH, 4);
  });
  it('follow the seat pieces: the side a seat stands nearest to is seated, tucked in or not', () => {
    const strips = seatStrips(sceneOf([table, seat('k1', 3000, 2150), seat('k2', 3500, 2500)]));
    expect(strips.map((s) => s.side)).toEqual(['back', 'right']);
  });
  it('are given once for a side that both name, and not at all for a table without seats', () => {
    expect(seatStrips(sceneOf([{ ...table, seatSides: { back: 1 } }, seat('k1', 3000, 2150)]))).toHaveLength(1);
    expect(seatStrips(sceneOf([{ ...table, seatSides: { back: 0 } }]))).toHaveLength(0);
  });
  it('are told where something measured ends at one, and not at the table itself', () => {
    const strips = seatStrips(sceneOf([{ ...table, seatSides: { back: 2 } }]));
    expect(stripAt(strips, { x: 3000, y: 2200 - SEATED_DEPTH })?.side).toBe('back');
    expect(stripAt(strips, { id: 't1', x: 3000, y: 2200 - SEATED_DEPTH })?.table.id).toBe('t1');
    expect(stripAt(strips, { id: 't2', x: 3000, y: 2200 - SEATED_DEPTH })).toBeUndefined();
    expect(stripAt(strips, { x: 3000, y: 2200 })).toBeUndefined();
    expect(stripAt(strips, { x: 3000, y: 2800 })).toBeUndefined();
  });
});
