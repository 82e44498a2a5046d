import { expect, it } from 'vitest';
import { placeOver, scaledByTwoPoints } from '#client/survey/placePicture.ts';
import { add, distance, scale, sub, turn } from '#model/geometry/vec.ts';

const picture = { x: 3000, y: 2500, scale: 10, rotation: 0 };
/** Where a px of the picture, counted from its middle, lies on the plan. */
const onPlan = (place: typeof picture, px: { x: number; y: number }) => add(place, turn(scale(px, place.scale), place.rotation));

it('covers the room it is laid under', () => {
  expect(placeOver({ width: 800, height: 600 }, { minX: 0, minY: 0, maxX: 6000, maxY: 6000 })).toEqual({
    x: 3000,
    y: 3000,
    scale: 10,
    rotation: 0,
  });
});

it.each(['as it lies', 'level', 'upright'] as const)(
  'comes to scale by two points, %s: the first stays, the second is so far off',
  (lie) => {
    const [p, q] = [
      { x: -120, y: 40 },
      { x: 200, y: 70 },
    ];
    const [from, to] = [onPlan(picture, p), onPlan(picture, q)];
    const place = scaledByTwoPoints(picture, from, to, 6400, lie);
    if (!place) throw new Error('it was not scaled');
    expect(distance(onPlan(place, p), from)).toBeLessThan(1e-6);
    const run = sub(onPlan(place, q), onPlan(place, p));
    expect(Math.hypot(run.x, run.y)).toBeCloseTo(6400, 6);
    if (lie === 'level') expect(Math.abs(run.y)).toBeLessThan(1e-6);
    if (lie === 'upright') expect(Math.abs(run.x)).toBeLessThan(1e-6);
    if (lie === 'as it lies') expect(place.rotation).toBe(0);
  },
);

it('is not scaled by one point', () => expect(scaledByTwoPoints(picture, picture, picture, 1000, 'level')).toBeNull());
