import { expect, it } from 'vitest';
import { sayDay } from '#client/text/sayDay.ts';
import { sayDate } from '#model/units/day.ts';

// The words of the platform's own calendar (ECMA-402, en-GB), which the page uses where there is a time too.
it.each(['2027-04-05', '2026-11-25', '2024-02-29', '2030-12-31', '1999-01-01'])('%s is said as the page says it', (iso) => {
  expect(sayDate(iso)).toBe(sayDay(iso));
});
it.each(['', 'soon', '2027-13-01', '2027-04-40', '2027-4-5'])('"%s" stays as it is', (text) => {
  expect(sayDate(text)).toBe(text);
});
