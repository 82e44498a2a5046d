/** One age of a growth table: months, then L, M (cm or kg) and S. */
export type LmsRow = readonly [months: number, l: number, m: number, s: number];

/** A growth table by sex, ages ascending. */
export interface LmsTable {
  readonly girl: readonly LmsRow[];
  readonly boy: readonly LmsRow[];
}
export type GrowthSex = keyof LmsTable;
