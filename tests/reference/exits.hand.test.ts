import { describe, expect, it } from 'vitest';
import { measureExitWalks } from '#model/measures/exits.ts';
import { buildScene } from '#model/scene/build.ts';
import { type PlainRoomChange, plainRoom } from '#tests/support/plainRoom.ts';

// Walks to exits against plane geometry worked by hand, beside each case; every room is 6000 by 5000 unless it says so.
type Pieces = NonNullable<PlainRoomChange['pieces']>;
/** Its clear opening is its width, in the middle of the wall's stretch from 400 to 1300: walked through at (850, 0). */
const north = { id: 'd1', kind: 'passage', from: 'c1', offset: 400, width: 900, exit: true } as const;
/** In the south wall, which runs from (6000, 5000) west: walked through at (850, 5000). */
const south = { ...north, id: 'd2', from: 'c3', offset: 4700 } as const;
const block = (x1: number, y1: number, x2: number, y2: number): Pieces[number] => ({
  id: `k${x1}`,
  kind: 'other',
  x: (x1 + x2) / 2,
  y: (y1 + y2) / 2,
  width: x2 - x1,
  depth: y2 - y1,
});
const walks = (pieces: Pieces, openings: NonNullable<PlainRoomChange['room']>['openings'] = [north]) =>
  measureExitWalks(buildScene(plainRoom({ room: { openings }, pieces })));
/** mm: doorways are walked through 0.004 inside the wall's line; the farthest place is found to 0.001. */
const near = (value: number | undefined, hand: number): void => expect(Math.abs((value ?? Number.NaN) - hand)).toBeLessThan(0.05);

describe('the farthest walk to an exit, by hand', () => {
  it('an empty room: straight to the corner across', () => {
    // From (850, 0) to (6000, 5000).
    near(walks([]).toNearest?.least, Math.hypot(5150, 5000));
  });
  it('a screen from the north wall: straight to its corner, along its end, straight on', () => {
    // Screen from x 2000 to 3000 down to y 4000: (850, 0) - (2000, 4000) - (3000, 4000) - (6000, 0).
    near(walks([block(2000, 0, 3000, 4000)]).toNearest?.least, Math.hypot(1150, 4000) + 1000 + Math.hypot(3000, 4000));
  });
  it('two screens, from north and south: through both gaps', () => {
    // Thin of 100. (850, 0) - (2000, 4000) - (2100, 4000) - (4000, 1000) - (4100, 1000) - (6000, 5000).
    const hand = Math.hypot(1150, 4000) + 100 + Math.hypot(1900, 3000) + 100 + Math.hypot(1900, 4000);
    near(walks([block(2000, 0, 2100, 4000), block(4000, 1000, 4100, 5000)]).toNearest?.least, hand);
  });
  it('two exits across: each corner of the far wall is 5150 beside one, the middle of that wall farthest from both', () => {
    // (6000, 2500): hypot(5150, 2500) from either; (6000, 0) is only 5150 from the north one.
    const { toNearest, toEach } = walks([], [north, south]);
    near(toNearest?.least, Math.hypot(5150, 2500));
    near(toEach[0]?.least, Math.hypot(5150, 5000));
    near(toEach[1]?.least, Math.hypot(5150, 5000));
  });
  it('an exit that is shut off has no walk, and the other serves all', () => {
    // A block over the whole south exit, flush with both walls: (0, 3500) to (1900, 5000). Farthest stays (6000, 5000).
    const { toEach, toNearest } = walks([block(0, 3500, 1900, 5000)], [north, south]);
    expect(toEach[1]).toBeNull();
    near(toNearest?.least, Math.hypot(5150, 5000));
  });
  it('a gap of 299 is none, one of 301 is a way', () => {
    // A screen across from the west wall at y 2000 to 2100 leaves a gap at the east wall. Through it the farthest place is
    // (0, 5000), by the screen's two corners; without it that floor is not walked to, and (6000, 2000) is farthest before it.
    const gap = (wide: number) => walks([block(0, 2000, 6000 - wide, 2100)]).toNearest?.least;
    near(gap(301), Math.hypot(6000 - 301 - 850, 2000) + 100 + Math.hypot(6000 - 301, 2900));
    expect(gap(299)).toBeLessThan(Math.hypot(5150, 2100) + 0.05);
  });
});
