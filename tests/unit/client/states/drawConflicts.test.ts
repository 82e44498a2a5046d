import { expect, it } from 'vitest';
import { besideOf } from '#client/states/drawConflicts.ts';

const box = (minX: number, minY: number, width = 50, height = 25) => ({ minX, minY, maxX: minX + width, maxY: minY + height });
/** px that the two names are long */
const [MINE, THEIRS] = [28, 58];

it('the two names never lie on one another, however near the two places', () => {
  for (const width of [10, 50])
    for (let dx = -60; dx <= 60; dx += 5)
      for (let dy = -40; dy <= 40; dy += 5) {
        const mine = box(200, 200, width);
        const [at, align] = besideOf(box(200 + dx, 200 + dy, width), mine, MINE);
        const left = align === 'right' ? at.x - THEIRS : at.x;
        const isApart = left >= mine.minX + MINE + 6 || left + THEIRS <= mine.minX - 6 || Math.abs(at.y - (mine.maxY + 10)) >= 13;
        expect([width, dx, dy, isApart]).toEqual([width, dx, dy, true]);
      }
});
