import { expect, it } from 'vitest';
import { wallName } from '#client/text/wallName.ts';

it('a wall is called by its side of the sheet, and numbered where there are several', () => {
  const [north, east, step] = [{ inward: { x: 0, y: 1 } }, { inward: { x: -1, y: 0 } }, { inward: { x: -1, y: 0 } }];
  const walls = [north, east, step];
  expect(walls.map((wall) => wallName(walls, wall))).toEqual(['north wall', 'east wall 1', 'east wall 2']);
});
