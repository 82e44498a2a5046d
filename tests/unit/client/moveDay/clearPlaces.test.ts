import { expect, it } from 'vitest';
import { lengthPlace, roundPlace } from '#client/moveDay/clearPlaces.ts';

const size = { width: 30, height: 13 };
const level = {
  points: [
    { x: 0, y: 0 },
    { x: 200, y: 0 },
  ],
};
const upright = {
  points: [
    { x: 100, y: -100 },
    { x: 100, y: 100 },
  ],
};

it('writes the lengths of crossing arrows clear of the crossing, each at its own', () => {
  const arrows = [level, upright];
  const one = lengthPlace(level, size, { names: [], rounds: [], arrows });
  const other = lengthPlace(upright, size, { names: [one], rounds: [], arrows });
  expect(Math.abs(one.center.x - 100)).toBeGreaterThan(16);
  expect(Math.abs(one.center.y)).toBeLessThan(10);
  expect(Math.abs(other.center.y)).toBeGreaterThan(7);
  expect(Math.abs(other.center.x - 100)).toBeLessThan(20);
});

it('keeps a length off a name and a number', () => {
  const names = [{ center: { x: 100, y: 9 }, width: 80, height: 14 }];
  const { center } = lengthPlace(level, size, { names, rounds: [{ x: 100, y: -8 }], arrows: [level] });
  expect(Math.abs(center.x - 100) > 24 || Math.abs(center.y) > 20).toBe(true);
});

it('sets a number at the beginning of its arrow, beside a name that stands there', () => {
  expect(roundPlace(level.points, 9, { names: [], rounds: [], arrows: [level] })).toEqual({ x: 0, y: 0 });
  const name = { center: { x: 0, y: 0 }, width: 40, height: 14 };
  const place = roundPlace([{ x: 0, y: 0 }], 9, { names: [name], rounds: [{ x: 0, y: -18 }], arrows: [] });
  expect(Math.abs(place.x) >= 30 || Math.abs(place.y) >= 17).toBe(true);
  expect(Math.hypot(place.x, place.y + 18)).toBeGreaterThan(19);
});
