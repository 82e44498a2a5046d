import type { GrowthSex, LmsRow, LmsTable } from '../standards/lmsTable.ts';
import { normalQuantile } from './normalQuantile.ts';

/** L, M and S at one age; M in the table's unit. */
export interface Lms {
  readonly l: number;
  readonly m: number;
  readonly s: number;
}

/**
 * L, M and S of a table at an age in months, between two rows in a straight line. Ages outside the table
 * take its first or last row.
 */
export function lmsAt(table: LmsTable, sex: GrowthSex, months: number): Lms {
  const rows = table[sex];
  const after = rows.findIndex(([age]) => age >= months);
  const high = (after === -1 ? rows[rows.length - 1] : rows[after]) as LmsRow;
  const low = (after > 0 ? rows[after - 1] : high) as LmsRow;
  const span = high[0] - low[0];
  const t = span === 0 ? 0 : (months - low[0]) / span;
  const between = (at: 1 | 2 | 3) => low[at] * (1 - t) + high[at] * t;
  return { l: between(1), m: between(2), s: between(3) };
}

/** Where L·S·z nears -1 the curve of the table ends: beyond, its value here holds. */
const CURVE_ENDS = 1e-3;

/** The value at a z-score: M·(1 + L·S·z)^(1/L), or M·exp(S·z) when L is 0 (CDC 2000). In the unit of M. */
export function lmsValue({ l, m, s }: Lms, z: number): number {
  return l === 0 ? m * Math.exp(s * z) : m * Math.max(CURVE_ENDS, 1 + l * s * z) ** (1 / l);
}

/** The z-score of a percentile, 0 to 100 (5 gives -1.6449). */
export const zOfPercentile = (percentile: number): number => normalQuantile(percentile / 100);
