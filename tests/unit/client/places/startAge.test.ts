import { expect, it } from 'vitest';
import { startAge } from '#client/places/trial/startAge.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';

it('a trial begins within the ages of the class, with its youngest', () => {
  const groups = [
    { id: 'g1', name: '', fromMonths: 48, toMonths: 72, count: 9 },
    { id: 'g2', name: '', fromMonths: 40, toMonths: 48, count: 9 },
  ];
  expect(startAge(plainRoom({ children: { groups } }))).toBe(40);
  expect(startAge(plainRoom({ children: { groups: [] } }))).toBe(36);
});
