import { expect, it } from 'vitest';
import { inSquareFeet, squareFeet } from '#client/ui/squareFeet.ts';

// NIST Special Publication 811, appendix B.8: 1 ft² = 9.290 304 E-02 m², exact.
it('square feet go into m² and come back as they were typed', () => {
  expect(squareFeet(1)).toBeCloseTo(0.09290304, 12);
  expect(squareFeet(35)).toBeCloseTo(3.2516064, 9);
  for (const typed of [35, 20.5, 840, 0.01, 1234.56]) expect(inSquareFeet(squareFeet(typed))).toBe(typed);
});
