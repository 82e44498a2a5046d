import { describe, expect, it } from 'vitest';
import { lmsAt, lmsValue, zOfPercentile } from '#model/measures/growth.ts';
import { normalQuantile } from '#model/measures/normalQuantile.ts';
import { cdcStature } from '#model/standards/cdcStature.ts';
import { cdcWeight } from '#model/standards/cdcWeight.ts';
import type { LmsTable } from '#model/standards/lmsTable.ts';
import { readCsv } from '#tests/support/readCsv.ts';

// CDC Growth Charts 2000, statage.csv and wtage.csv: L, M, S and the published percentiles of each age and sex.
const tables: readonly [name: string, file: string, table: LmsTable][] = [
  ['stature for age', 'cdc-statage.csv', cdcStature],
  ['weight for age', 'cdc-wtage.csv', cdcWeight],
];
const percentiles = [3, 5, 10, 25, 50, 75, 90, 95, 97];

describe.each(tables)('CDC 2000, %s', (_, file, table) => {
  const rows = readCsv(file);
  const sexOf = (row: Record<string, string>) => (row.Sex === '2' ? 'girl' : 'boy');

  it('holds every row, 24 to 156 months, both sexes', () => {
    expect(rows).toHaveLength(266);
    expect(table.girl).toHaveLength(133);
    expect(table.boy).toHaveLength(133);
    for (const row of rows) {
      expect(lmsAt(table, sexOf(row), Number(row.Agemos))).toEqual({ l: Number(row.L), m: Number(row.M), s: Number(row.S) });
    }
  });
  it('gives every published percentile to its last digits', () => {
    let cells = 0;
    for (const row of rows) {
      const lms = lmsAt(table, sexOf(row), Number(row.Agemos));
      for (const p of percentiles) {
        // Published to about eight decimals: cm or kg.
        expect(Math.abs(lmsValue(lms, zOfPercentile(p)) - Number(row[`P${p}`])), `${row.Agemos} P${p}`).toBeLessThan(3e-7);
        cells++;
      }
    }
    expect(cells).toBe(266 * 9);
  });
  it('goes straight between two rows and holds the ends', () => {
    const [a, b] = [lmsAt(table, 'girl', 35.5), lmsAt(table, 'girl', 36.5)];
    expect(lmsAt(table, 'girl', 36).m).toBeCloseTo((a.m + b.m) / 2, 12);
    expect(lmsAt(table, 'girl', 10)).toEqual(lmsAt(table, 'girl', 24));
    expect(lmsAt(table, 'boy', 400)).toEqual(lmsAt(table, 'boy', 156));
  });
});

it('takes the limit of the formula where L is 0', () => {
  const near = lmsValue({ l: 1e-9, m: 100, s: 0.04 }, -1.5);
  expect(lmsValue({ l: 0, m: 100, s: 0.04 }, -1.5)).toBeCloseTo(near, 5);
});

// Wichura 1988, Algorithm AS 241: the check values printed with the algorithm (from memory).
it.each([
  [0.25, -0.6744897501960817],
  [0.001, -3.090232306167814],
  [1e-20, -9.262340089798409],
])('the normal quantile of %s', (p, z) => {
  expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-13);
  expect(normalQuantile(1 - Math.max(p, 1e-3))).toBeCloseTo(-normalQuantile(Math.max(p, 1e-3)), 12);
});
it.each([0, 1, -1, Number.NaN])('a share of %s has no quantile', (p) => expect(normalQuantile(p)).toBeNaN());
