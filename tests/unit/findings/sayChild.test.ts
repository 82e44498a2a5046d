import { expect, it } from 'vitest';
import { sayChild, sayWhichChild } from '#model/findings/sayChild.ts';

it('says a child by her age and how many of hers are taller, everywhere alike', () => {
  expect(sayChild({ months: 51, percentile: 5 })).toBe('a girl of 4 years 3 months, smaller than 95 of 100');
  expect(sayChild({ months: 13, percentile: 97.3 })).toBe('a girl of 1 year 1 month, smaller than 2.7 of 100');
  expect(sayWhichChild('the smallest child', { months: 36, percentile: 2.5, isMeasured: false })).toBe(
    'the smallest child (a girl of 3 years 0 months, smaller than 97.5 of 100)',
  );
  expect(sayWhichChild('the smallest child', { months: 36, percentile: 5, isMeasured: true })).toBe('the smallest child (as measured)');
});
