import { describe, expect, it } from 'vitest';
import { childModel } from '#model/measures/childModel.ts';
import { markOfHeight, markOfStature } from '#model/measures/seatSizes.ts';
import { indexRow } from '#tests/support/standardsIndex.ts';

interface Mark {
  readonly mark: number;
  readonly seat: number;
  readonly table: number;
  readonly stature: readonly [number, number];
  readonly ages?: string;
}
// EN 1729-1, table 1 (row D01, read in a purchasing guide); the ages beside the marks are rough bands of that guide (UK).
const marks = (Object.values(indexRow('D01').values).find(Array.isArray) ?? []) as readonly Record<string, unknown>[];
const rows: Mark[] = marks.map((row) => ({
  mark: Number(row.mark),
  seat: Number(row.seat_mm ?? row.seat),
  table: Number(row.table_mm ?? row.table),
  stature: (row.stature_mm ?? row.stature) as [number, number],
  ...(typeof row.ages === 'string' && { ages: row.ages }),
}));

describe('size marks of chairs and tables', () => {
  it('reads the index', () => expect(rows.length).toBe(8));
  it.each(rows.map((row) => [row.mark, row] as const))('mark %i is found again by table, seat and stature', (mark, row) => {
    expect(markOfHeight(row.table, 'table')).toBe(mark);
    expect(markOfHeight(row.seat, 'seat')).toBe(mark);
    expect(markOfStature((row.stature[0] + row.stature[1]) / 2)).toBe(mark);
  });
  it.each(rows.filter((row) => /^\d+-\d+$/.test(row.ages ?? '')).map((row) => [row.ages ?? '', row.mark] as const))(
    'the median child in the middle of ages %s has mark %i or the one beside it',
    (ages, mark) => {
      const [from = 0, to = 0] = ages.split('-').map(Number);
      const child = childModel({ months: ((from + to) / 2) * 12, percentile: 50 });
      expect(Math.abs(markOfStature(child?.stature ?? 0) - mark)).toBeLessThanOrEqual(1);
    },
  );
});
