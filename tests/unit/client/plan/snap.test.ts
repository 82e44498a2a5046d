import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersOf, type TurnedBox } from '#client/plan/box.ts';
import { keepInside, type SnapScene, snap } from '#client/plan/snap.ts';
import { contains } from '#model/geometry/polygon.ts';
import { buildRoom } from '#model/scene/room.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const room = (corners: [number, number][]): SnapScene => {
  const built = buildRoom(plainRoom({ room: { corners: corners.map(([x, y], i) => ({ id: `c${i}`, x, y })), openings: [] } }).room);
  return { outline: built.outline, walls: built.walls, others: [] };
};
const plain = room([
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [0, 5000],
]);
const shelf: TurnedBox = { x: 3000, y: 2500, width: 1200, depth: 320, rotation: 0 };
const near = { tolerance: 120, turnsToWall: false };

describe('snapping to walls', () => {
  it('comes to lie flush with a wall within the tolerance, and not beyond it', () => {
    expect(snap({ ...shelf, y: 160 + 90 }, plain, near)).toMatchObject({ x: 3000, y: 160 });
    expect(snap({ ...shelf, y: 160 + 130 }, plain, near)).toMatchObject({ y: 290, lines: [] });
  });

  it('takes both walls of a corner', () => {
    const snapped = snap({ ...shelf, x: 680, y: 200 }, plain, near);
    expect(snapped).toMatchObject({ x: 600, y: 160 });
    expect(snapped.lines.map((line) => line.kind)).toEqual(['wall', 'wall']);
  });

  it('turns its back to the wall its centre is brought right up to', () => {
    const turning = { ...near, turnsToWall: true };
    expect(snap({ ...shelf, y: 200 }, plain, turning)).toMatchObject({ rotation: 0, y: 160 });
    expect(snap({ ...shelf, x: 5800 }, plain, turning)).toMatchObject({ rotation: 90, x: 5840 });
    expect(snap({ ...shelf, y: 4800 }, plain, turning)).toMatchObject({ rotation: 180, y: 4840 });
    expect(snap({ ...shelf, x: 200 }, plain, turning)).toMatchObject({ rotation: 270, x: 160 });
  });

  it('leaves a shelf end-on at the wall: a room divider is not turned', () => {
    expect(snap({ ...shelf, x: 640 }, plain, { ...near, turnsToWall: true })).toMatchObject({ rotation: 0, x: 600 });
  });

  it('turns to a slanted wall and lies flush with it', () => {
    const slanted = room([
      [2000, 0],
      [6000, 0],
      [6000, 5000],
      [0, 5000],
      [0, 2000],
    ]);
    const snapped = snap({ ...shelf, x: 1160, y: 1160 }, slanted, { ...near, turnsToWall: true });
    expect(snapped.rotation).toBe(315);
    const gaps = cornersOf({ ...shelf, ...snapped }).map((p) => (p.x + p.y - 2000) / Math.SQRT2);
    expect(Math.min(...gaps)).toBeCloseTo(0, 6);
  });

  it('is drawn by nothing when free, yet stays in the room', () => {
    expect(snap({ ...shelf, y: 170 }, plain, { ...near, isFree: true })).toMatchObject({ y: 170, lines: [] });
    expect(snap({ ...shelf, y: -900 }, plain, { ...near, isFree: true }).y).toBeCloseTo(160, 6);
  });
});

describe('snapping to neighbours', () => {
  const beside: TurnedBox = { x: 1600, y: 2500, width: 1200, depth: 320, rotation: 180 };

  it('stands end to end and in line with a neighbour', () => {
    const snapped = snap({ ...shelf, x: 2840, y: 2530 }, { ...plain, others: [beside] }, near);
    expect(snapped).toMatchObject({ x: 2800, y: 2500 });
    expect(snapped.lines.map((line) => line.kind).sort()).toEqual(['aligned', 'flush']);
  });

  it('stands back to back with a neighbour', () => {
    expect(snap({ ...shelf, x: 1600, y: 2790 }, { ...plain, others: [beside] }, near)).toMatchObject({ x: 1600, y: 2820 });
  });

  it('is not drawn by a thing turned otherwise', () => {
    expect(snap({ ...shelf, x: 2840, y: 2530 }, { ...plain, others: [{ ...beside, rotation: 20 }] }, near).lines).toEqual([]);
  });
});

describe('nothing is lost outside', () => {
  const angled = room([
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [3000, 3000],
    [3000, 5000],
    [0, 5000],
  ]);

  it('keeps the centre inside, wherever a thing is dragged, in a room with an inner corner', () => {
    const anywhere = fc.record({
      x: fc.integer({ min: -5000, max: 12_000 }),
      y: fc.integer({ min: -5000, max: 12_000 }),
      rotation: fc.integer({ min: 0, max: 359 }),
    });
    fc.assert(
      fc.property(anywhere, (at) => {
        const kept = snap({ ...shelf, ...at }, angled, { ...near, turnsToWall: true });
        return contains(angled.outline, kept);
      }),
      { seed: 20261125, numRuns: 2000 },
    );
  });

  it('keeps a small thing wholly inside a plain room', () => {
    const anywhere = fc.record({ x: fc.integer({ min: -2000, max: 8000 }), y: fc.integer({ min: -2000, max: 8000 }) });
    fc.assert(
      fc.property(anywhere, fc.integer({ min: 0, max: 359 }), (at, rotation) => {
        const kept = keepInside({ ...shelf, ...at, rotation }, plain);
        return cornersOf(kept).every((p) => p.x > -1e-6 && p.y > -1e-6 && p.x < 6000 + 1e-6 && p.y < 5000 + 1e-6);
      }),
      { seed: 20261126, numRuns: 2000 },
    );
  });
});
