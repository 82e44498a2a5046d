import { describe, expect, it } from 'vitest';
import { monthsOf, yearOf } from '#client/places/yearSteps.ts';

const today = new Date('2027-01-15T12:00:00');
const entries = [
  { from: '2027-04-01', children: 26 },
  { from: '2026-09-01', children: 21 },
  { from: 'some day', children: 99 },
];

describe('the year as steps', () => {
  it('puts the dates in order, what is counted now between past and promised, and leaves out what is no date', () => {
    expect(yearOf(24, entries, today).steps.map(({ children, isPromised }) => [children, isPromised])).toEqual([
      [21, false],
      [24, false],
      [26, true],
    ]);
  });

  it('is one level line when no date is entered', () => {
    const year = yearOf(24, [], today);
    expect(year.steps).toHaveLength(1);
    expect(year.start < today && year.end > today).toBe(true);
  });

  it('names every month that is drawn', () => {
    const months = monthsOf(yearOf(24, entries, today)).map((month) => month.getMonth() + 1);
    expect(months).toEqual([9, 10, 11, 12, 1, 2, 3, 4, 5]);
  });
});
