import { expect, it } from 'vitest';
import { sayYearsAndMonths } from '#model/units/sayAge.ts';

it.each([
  [36, '3 years 0 months'],
  [51, '4 years 3 months'],
  [13, '1 year 1 month'],
])('says %i months as %s', (months, said) => expect(sayYearsAndMonths(months)).toBe(said));
