import { describe, expect, it } from 'vitest';
import { freeFloorBefore, obstaclesOf } from '#model/measures/frontFloor.ts';
import { buildScene } from '#model/scene/build.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

type Piece = NonNullable<PlainRoomChange['pieces']>[number];
const shelf = (change: Partial<Piece> = {}): Piece => ({ id: 's1', kind: 'shelf', x: 3000, y: 1000, width: 1200, depth: 400, ...change });
const block = (id: string, x: number, y: number, change: Partial<Piece> = {}): Piece => ({
  id,
  kind: 'other',
  x,
  y,
  width: 400,
  depth: 400,
  ...change,
});

/** Free floor before the middle of the front, or `along` mm from its left end; the front lies at y = 1200. */
function floor(pieces: Piece[], along = 600, change: PlainRoomChange = {}): number {
  const scene = buildScene(plainRoom({ pieces, ...change }));
  return freeFloorBefore(scene, obstaclesOf(scene), scene.sides[0] as SceneSide, 2500)(along);
}

describe('free floor before a front', () => {
  it('ends at the first thing straight before the spot', () => {
    expect(floor([shelf(), block('x1', 3000, 2000), block('x2', 3000, 3000)])).toBeCloseTo(600, 6);
    expect(floor([shelf(), block('x1', 3000, 2000)], 100)).toBe(2500);
    expect(floor([shelf(), block('x1', 2500, 2000)], 100)).toBeCloseTo(600, 6);
  });
  it('ends at a wall, at most at the distance asked for', () => {
    expect(floor([shelf({ y: 3000 })])).toBeCloseTo(1800, 6);
    expect(floor([shelf()])).toBe(2500);
    expect(floor([shelf({ y: 4800 })])).toBe(0);
  });
  it('follows the way the shelf is turned', () => {
    // Turned by 90 the front faces west and lies at x = 2800; left of somebody who faces it is the north end.
    expect(floor([shelf({ rotation: 90 })])).toBe(2500);
    expect(floor([shelf({ x: 1000, rotation: 90 })])).toBeCloseTo(800, 6);
    expect(
      floor([shelf({ y: 2500, rotation: 45 }), block('x1', 3000 - 1000 / Math.SQRT2, 2500 + 1000 / Math.SQRT2, { rotation: 45 })]),
    ).toBeCloseTo(600, 6);
  });
  it('is free where a rug lies or a seat belongs to a table', () => {
    const rug = block('r1', 3000, 2000, { kind: 'rug' });
    const table: Piece = { id: 't1', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600 };
    const seat = block('c1', 3000, 2500, { kind: 'seat', table: 't1' });
    expect(floor([shelf(), rug, table, seat])).toBeCloseTo(1500, 6);
  });
  it('is none where something stands against the front, and not narrowed by a neighbour in the row', () => {
    expect(floor([shelf(), block('x1', 3000, 1400)])).toBe(0);
    expect(floor([shelf(), block('x1', 3000, 1300)])).toBe(0);
    expect(floor([shelf(), shelf({ id: 's2', x: 4200 })], 1200)).toBe(2500);
  });
});
