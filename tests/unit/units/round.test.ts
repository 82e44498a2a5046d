import { expect, it } from 'vitest';
import { sayDecimal } from '#model/units/round.ts';

// Half away from zero in decimal, as ISO 80000-1 annex B, rule B, rounds the magnitude (from memory).
it.each([
  [11.95, 1, '12.0'],
  [11.94, 1, '11.9'],
  [23.88, 1, '23.9'],
  [1.005, 2, '1.01'],
  [-1.005, 2, '-1.01'],
  [0.7145, 3, '0.715'],
  [27.485 / 2.3, 2, '11.95'],
  [0.1 + 0.2, 2, '0.30'],
  [-0.001, 2, '0.00'],
  [0, 0, '0'],
  [1e-9, 2, '0.00'],
  [123456789.5, 0, '123456790'],
  [Number.NaN, 2, 'NaN'],
])('%d with %i decimals is %s', (value, decimals, said) => {
  expect(sayDecimal(value, decimals)).toBe(said);
});

it('of every whole mm up to 5 m, and its neighbours of a twentieth: what counting in whole numbers says', () => {
  for (let twentieth = 0; twentieth <= 100_000; twentieth++) {
    // In twentieths of a mm; a hundredth of a metre is 200 of them.
    const hundredths = Math.floor((twentieth + 100) / 200);
    const said = `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, '0')}`;
    if (sayDecimal(twentieth / 20_000, 2) !== said) expect(sayDecimal(twentieth / 20_000, 2), `${twentieth} twentieths`).toBe(said);
  }
});
