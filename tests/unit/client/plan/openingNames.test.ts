import { expect, it } from 'vitest';
import { drawOpeningNames } from '#client/plan/draw/drawOpenings.ts';
import { wallPx } from '#client/plan/draw/drawRoom.ts';
import type { Pen } from '#client/plan/draw/pen.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { canvas } from './canvas.ts';

const LONG = 'hall with the coats and the boots of the whole house and the way to the garden and the kitchen';

/** What is written of a door in a wall of the plain room (6 × 5 m), 100 px a metre, letters 6 px wide: words, where, and whether upright. */
function written(name: string, from: string) {
  const said: { text: string; x: number; y: number; isUpright: boolean }[] = [];
  let [x, y, isUpright] = [0, 0, false];
  const ctx = canvas({
    translate: (toX: number, toY: number) => {
      [x, y, isUpright] = [toX, toY, false];
    },
    rotate: () => {
      isUpright = true;
    },
    fillText: (text: string) => said.push({ text, x, y, isUpright }),
  });
  const pen: Pen = { ctx, view: { k: 0.1, x: 100, y: 100 }, units: 'metric', isRightToLeft: false };
  const door = { id: 'd1', kind: 'door' as const, name, from, offset: 1000, width: 900, swing: 'in-left' as const };
  drawOpeningNames(pen, buildScene(plainRoom({ room: { openings: [door] } })).room);
  return { said, wall: wallPx(pen) };
}

it('a short name stands before its door', () => {
  expect(written('hall', 'c2').said).toMatchObject([{ text: 'hall', isUpright: false }]);
});

it('one that would run over the string beside an upright wall stands along the wall, cut where the wall ends', () => {
  const { said, wall } = written(LONG, 'c2');
  expect(said).toHaveLength(1);
  const [{ text, x, y, isUpright } = { text: '', x: 0, y: 0, isUpright: false }] = said;
  expect(isUpright).toBe(true);
  expect(text).toMatch(/^hall with the coats.*…$/);
  const half = (text.length * 6) / 2;
  // The east wall stands at 700 px and goes from 100 to 600; its string lies 46 px past it.
  expect(y - half).toBeGreaterThanOrEqual(100);
  expect(y + half).toBeLessThanOrEqual(600);
  expect(x - 6).toBeGreaterThan(700 + wall);
  expect(x + 6).toBeLessThan(700 + wall + 46);
});

it('one over a level wall is cut where the wall ends', () => {
  const [one] = written(`${LONG} ${LONG}`, 'c1').said;
  expect(one?.isUpright).toBe(false);
  expect(one?.text).toMatch(/…$/);
  const half = ((one?.text.length ?? 0) * 6) / 2;
  expect((one?.x ?? 0) - half).toBeGreaterThanOrEqual(100);
  expect((one?.x ?? 0) + half).toBeLessThanOrEqual(700);
});
