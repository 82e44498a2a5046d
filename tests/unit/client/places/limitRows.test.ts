import { describe, expect, it } from 'vitest';
import { scaleFor } from '#client/places/limitRows.tsx';
import { limitRowsOf } from '#client/places/limitRowsOf.ts';
import type { PlacesLine } from '#client/places/placesLine.ts';
import { sayPerChild } from '#client/places/sayEach.ts';
import { childrenOn, spaceNeed } from '#model/measures/roomNeeds.ts';

const line = { enrolled: 24, byArea: 23, byWork: 26, byAdults: null, byGroup: 24, year: [] } as unknown as PlacesLine;

describe('the staff of children', () => {
  it.each([
    [980, 24],
    [560, 24],
    [340, 28],
    [340, 120],
  ])('keeps to %i px with %i children, its numbers apart', (width, children) => {
    const scale = scaleFor(width, children);
    expect(scale.most).toBeGreaterThan(children);
    expect(scale.at(0)).toBeGreaterThan(0);
    expect(scale.at(scale.most)).toBeLessThan(width);
    expect(scale.numberEvery * scale.perChild).toBeGreaterThanOrEqual(26);
  });
});

describe('the ways of asking how many', () => {
  it('stand in their order, each short that takes fewer than are enrolled', () => {
    const rows = limitRowsOf({ line, inForce: null, other: null, units: 'metric', ages: [] });
    expect(rows.map(({ title, value, isShort }) => [title, value, isShort])).toEqual([
      ['Children', 24, false],
      ['Places to work', 26, false],
      ['Adults', null, false],
      ['Largest group', 24, false],
    ]);
  });

  it('say how many of each age are enrolled', () => {
    const [children] = limitRowsOf({ line, inForce: null, other: null, units: 'metric', ages: [62, 36, 40, 50] });
    expect(children?.sub).toBe('enrolled: 2 aged 3, 1 aged 4, 1 aged 5');
  });

  it('leave out what no rule asks', () => {
    const bare = { ...line, byWork: null, byGroup: null } as PlacesLine;
    expect(limitRowsOf({ line: bare, inForce: null, other: null, units: 'metric', ages: [] }).map(({ title }) => title)).toEqual([
      'Children',
      'Adults',
    ]);
  });
});

describe('the reckoning of the floor', () => {
  const under = (groups: readonly object[], counted: number) => {
    const table = {
      rows: [
        { fromMonths: 24, toMonths: 36, m2: 2.5 },
        { fromMonths: 36, toMonths: 72, m2: 2.3 },
      ],
    };
    const need = spaceNeed(groups as never, table as never);
    const byArea = need && childrenOn(counted, need.perChild);
    const inForce = {
      counted: { least: counted, most: counted },
      need,
      byArea,
      byAreaMost: byArea,
      rules: { name: 'England', missing: [] },
    };
    const floor = limitRowsOf({ line, inForce: inForce as never, other: null, units: 'metric', ages: [] })[1];
    return [floor?.sub, floor?.words];
  };
  // England, C01: 2.3 m² a child from three, 2.5 m² from two.
  it('of one figure is a quotient of what is printed, of several ages a sum: no mean that no rule states', () => {
    expect(under([{ fromMonths: 36, count: 24 }], 54.92)).toEqual(['2.30 m² a child, England', '54.92 m² counted ÷ 2.30 m² = 23.88']);
    expect(
      under(
        [
          { fromMonths: 36, count: 24 },
          { fromMonths: 33, count: 1 },
        ],
        54.92,
      ),
    ).toEqual(['2.50 m² at age 2, 2.30 m² from 3, England', '54.92 m² counted; 1 × 2.50 + 24 × 2.30 = 57.70 m² needed']);
  });
  // NIST SP 811: 1 ft = 0.3048 m exactly, so 30 sq ft are 2.787 091 2 m² and 35 are 3.251 606 4.
  it.each([
    [30 * 0.3048 ** 2, '2.787 m²'],
    [35 * 0.3048 ** 2, '3.252 m²'],
    [2.3, '2.30 m²'],
  ])('of %d m² a child is written so that a quotient by it is right', (m2, said) => {
    expect(sayPerChild(m2, 'metric')).toBe(said);
    expect(54.92 / Number.parseFloat(said)).toBeCloseTo(54.92 / m2, 2);
  });
  it('gives no quotient that its own figures do not give', () => {
    // 45.996 m² takes 19 of 2.3 m²; printed it reads 46.00 m², which would be 20.
    expect(under([{ fromMonths: 36, count: 24 }], 45.996)[1]).toBe('46.00 m² counted ÷ 2.30 m² = about 19');
  });
});
