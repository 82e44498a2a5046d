import { describe, expect, it } from 'vitest';
import { openingsOnNewWalls, placeOnWall, squareCorner, wallLength, withWallLength, withWallMoved } from '#client/plan/roomShape.ts';
import { nextCorner, rectangle, typedCorner, withTypedWall } from '#client/plan/wallDraft.ts';
import { buildRoom } from '#model/scene/room.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

const { room } = plainRoom();
const xs = (corners: readonly { x: number }[]) => corners.map((c) => c.x);

describe('walls by figures', () => {
  it('makes a wall longer by moving the next one whole: a square room stays square', () => {
    const longer = withWallLength(room, 'c1', 7000);
    expect(longer.corners.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [7000, 0],
      [7000, 5000],
      [0, 5000],
    ]);
    expect(wallLength(longer.corners, 'c3')).toBe(7000);
  });

  it('moves a wall along its normal and keeps doors beside it where they are', () => {
    const built = buildRoom(room);
    const west = built.walls.find((w) => w.corner === 'c4');
    if (!west) throw new Error('no west wall');
    const moved = withWallMoved(room, west, -500);
    expect(xs(moved.corners)).toEqual([-500, 6000, 6000, -500]);
    // The north wall starts half a metre farther west, so the door that has not moved is half a metre farther along.
    expect(moved.openings[0]?.offset).toBe(900);
  });

  it('pushes an opening back onto a wall that has become too short', () => {
    const shorter = withWallLength({ ...room, openings: room.openings.map((o) => ({ ...o, offset: 5000 })) }, 'c1', 4000);
    expect(shorter.openings[0]?.offset).toBe(3100);
  });

  it('draws a corner square with its neighbours, and leaves it where it is far off', () => {
    expect(squareCorner(room, 'c2', { x: 6050, y: 30 }, 100)).toEqual({ x: 6000, y: 0 });
    expect(squareCorner(room, 'c2', { x: 6404, y: -298 }, 100)).toEqual({ x: 6400, y: -300 });
  });

  it('puts an opening on the nearest wall, within its ends and drawn to its middle', () => {
    const built = buildRoom(room);
    expect(placeOnWall(built, { x: 5900, y: 20 }, 900)).toMatchObject({ wall: { corner: 'c1' }, offset: 5100 });
    expect(placeOnWall(built, { x: 5800, y: 2530 }, 900)).toMatchObject({ wall: { corner: 'c2' }, offset: 2050 });
    expect(placeOnWall(built, { x: 100, y: 1200 }, 9000)?.width).toBe(5000);
  });

  it('finds the nearest new wall for doors of old ones', () => {
    const fresh = { ...room, corners: rectangle(5000, 4000).map((p, i) => ({ id: `n${i}`, ...p })) };
    expect(openingsOnNewWalls(buildRoom(room), buildRoom(fresh))).toEqual([{ id: 'd1', from: 'n0', offset: 400 }]);
  });
});

describe('walls corner by corner', () => {
  const start = [
    { x: 0, y: 0 },
    { x: 4000, y: 0 },
  ];

  it('draws the next wall square to the last', () => {
    expect(nextCorner(start, { x: 4200, y: 3003 }, 100).at).toEqual({ x: 4000, y: 3000 });
  });

  it('leaves a slanted wall slanted', () => {
    expect(nextCorner(start, { x: 5000, y: 1500 }, 100).at).toEqual({ x: 5000, y: 1500 });
  });

  it('comes into line with the first corner, and closes on it', () => {
    const three = [...start, { x: 4000, y: 3000 }];
    expect(nextCorner(three, { x: 60, y: 3100 }, 100)).toEqual({ at: { x: 0, y: 3000 }, closes: false });
    expect(nextCorner([...three, { x: 0, y: 3000 }], { x: 40, y: 50 }, 100)).toEqual({ at: { x: 0, y: 0 }, closes: true });
  });

  it('closes the room with a typed wall that comes back to the first corner', () => {
    let drawn: ReturnType<typeof withTypedWall> = { corners: [], closes: false };
    for (const long of [4000, 3000, 4000]) drawn = withTypedWall(drawn.corners, long, 90);
    expect(drawn).toMatchObject({ closes: false, corners: { length: 4 } });
    expect(withTypedWall(drawn.corners, 3000, 90)).toEqual({ closes: true, corners: drawn.corners });
    expect(withTypedWall(drawn.corners, 2900, 90).closes).toBe(false);
  });

  it('lays out typed lengths with their turns', () => {
    const second = typedCorner([{ x: 0, y: 0 }], 4000, 90);
    const third = typedCorner([{ x: 0, y: 0 }, second], 3000, 90);
    expect([second, third]).toEqual([
      { x: 4000, y: 0 },
      { x: 4000, y: 3000 },
    ]);
    expect(typedCorner([{ x: 0, y: 0 }, second], 1000, -90)).toEqual({ x: 4000, y: -1000 });
  });
});
