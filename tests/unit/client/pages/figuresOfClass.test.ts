import { expect, it } from 'vitest';
import { figuresOfClass } from '#client/pages/figuresOfClass.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

it('tells the settings that a check without options goes by, and which of them the class set', () => {
  const room = plainRoom({ access: { routeWidth: 1000 }, floorWork: { mat: { width: 1200, depth: 750 }, gap: 400 } });
  expect(figuresOfClass('way/width', room)).toContainEqual({ name: 'width of a way', value: '1.00 m', isDefault: false });
  expect(figuresOfClass('way/width', room)).toContainEqual({ name: 'least width of a way', value: '0.711 m', isDefault: true });
  expect(figuresOfClass('floor/mats', room)).toContainEqual({ name: 'gap between mats', value: '0.40 m', isDefault: false });
  expect(figuresOfClass('reach/see', room)).toEqual([{ name: 'percentile of the smallest child', value: '5', isDefault: true }]);
  expect(figuresOfClass('sight/hidden', room)).toEqual([{ name: 'head of a child at work', value: '0.55 m', isDefault: true }]);
  expect(figuresOfClass('order/gap', room)).toEqual([]);
});
