import { describe, expect, it } from 'vitest';
import { meets } from '#model/units/compare.ts';
import { otherReading, readLength } from '#model/units/readLength.ts';
import { sayArea, sayLength } from '#model/units/sayLength.ts';

describe('reading a length as typed', () => {
  // 25.4 mm an inch: the international inch, exact by definition (1959 agreement).
  it.each([
    ['1.6 m', 1600],
    ['1,6', 1600],
    ['160', 1600],
    ['160 cm', 1600],
    ['1600mm', 1600],
    ['0.915', 915],
    [`5' 3 1/2"`, 1612.9],
    [`5'3"`, 1600.2],
    [`36"`, 914.4],
    ['36 in', 914.4],
    [`3'`, 914.4],
    ['5 ft 3 in', 1600.2],
    [`5'3`, 1600.2],
    [`26' 3 1/2`, 8013.7],
    [`4 ft 1/4`, 1225.55],
    [`3 1/2"`, 88.9],
    [`1/2"`, 12.7],
  ])('%s', (typed, mm) => {
    const read = readLength(typed);
    expect(read.ok && read.mm).toBeCloseTo(mm, 6);
  });
  it('a bare number is inches where the class measures in feet', () => {
    expect(readLength('36', 'imperial')).toEqual({ ok: true, mm: 914.4 });
  });
  it('says in the units of the class what to try, and what a short bare number is not', () => {
    expect(readLength('4 6', 'imperial')).toMatchObject({ why: expect.stringContaining(`Try 5' 3 1/2", 63 (inches)`) });
    expect([otherReading('5'), otherReading('16', 'imperial')]).toEqual(['for 5 metres type 5 m', `for 16 feet type 16'`]);
    expect(['0', '21', '5.0', '5 m', ''].map((typed) => otherReading(typed))).toEqual([null, null, null, null, null]);
  });
  it.each(['', 'abc', '-3', '1.2.3', '5 furlongs', '1e9', '3/0"', '4 6', '1/2', '3 1/2', `4'6'`, `'`])(
    'refuses %j and says why',
    (typed) => {
      const read = readLength(typed);
      expect(read.ok).toBe(false);
      expect(!read.ok && read.why.length).toBeGreaterThan(5);
    },
  );
});

describe('saying a length', () => {
  it.each([
    [740, undefined, '0.74 m'],
    [915, undefined, '0.915 m'],
    [911.6, 915, '0.912 m'],
    [842.4, 915, '0.84 m'],
    [1200, undefined, '1.20 m'],
  ])('%d mm near %s', (mm, near, said) => expect(sayLength(mm, 'metric', near)).toBe(said));
  it.each([
    [914.4, `3' 0"`],
    [1612.9, `5' 3 1/2"`],
    [12.7, `1/2"`],
    [-6.35, `-1/4"`],
    [317.5, `1' 0 1/2"`],
    [0, `0"`],
    [304.8, `1' 0"`],
  ])('%d mm in feet', (mm, said) => expect(sayLength(mm, 'imperial')).toBe(said));
  it('areas', () => {
    expect(sayArea(43.2, 'metric')).toBe('43.20 m²');
    // 35 sq ft is printed as 3.252 m² in the capacity rules (22 CCR 101238.3).
    expect(sayArea(3.252, 'imperial')).toBe('35 sq ft');
  });
});

describe('comparing with a threshold', () => {
  // ADA 2010 prints 36 in (915 mm) and 32 in (815 mm): 403.5.1. The exact conversions pass too.
  it('a printed default passes at its inch figure', () => {
    expect(meets(914.4, 915, true)).toBe(true);
    expect(meets(812.8, 815, true)).toBe(true);
    expect(meets(914.3, 915, true)).toBe(false);
  });
  it('a figure of the class is taken as it is', () => {
    expect(meets(914.4, 915, false)).toBe(false);
    expect(meets(915, 915, false)).toBe(true);
  });
  it('what is not a number never passes', () => expect(meets(Number.NaN, 0)).toBe(false));
});
