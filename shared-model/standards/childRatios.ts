/** Children of an age that one adult may look after. Ages in months, from included, to not. */
interface RatioRow {
  readonly fromMonths: number;
  /** null: and older */
  readonly toMonths: number | null;
  readonly childrenPerAdult: number;
  /** Where at least one adult is a qualified teacher or the like. */
  readonly withQualified?: number;
  readonly groupMax?: number;
  readonly isFromMemory?: true;
}
/** A ratio by the ages of the children: each adult counts alike. */
export interface RatioTable {
  readonly kind: 'by age';
  /** Row of the index. */
  readonly source: string;
  readonly rows: readonly RatioRow[];
  /** Every child is reckoned by the row of the youngest, instead of each by its own. */
  readonly isByYoungest?: true;
}
/** A ratio by the adults' roles: a teacher alone, with an aide, with a qualified aide. */
export interface TeacherTable {
  readonly kind: 'by teacher';
  readonly source: string;
  readonly rows: readonly {
    readonly fromMonths: number;
    readonly toMonths: number | null;
    readonly alone: number;
    readonly withAide: number;
    readonly withQualifiedAide: number;
  }[];
}
export type Ratios = RatioTable | TeacherTable;

/** C02, England: ratios of the early years framework since September 2023 (found second-hand; school classes of 30 left out). */
export const ratioEngland: RatioTable = {
  kind: 'by age',
  source: 'C02',
  rows: [
    { fromMonths: 0, toMonths: 24, childrenPerAdult: 3 },
    { fromMonths: 24, toMonths: 36, childrenPerAdult: 5 },
    { fromMonths: 36, toMonths: null, childrenPerAdult: 8, withQualified: 13 },
  ],
};
/** C04, Scotland: inspectorate's guidance, 2018 (the first two found, the others from memory). */
export const ratioScotland: RatioTable = {
  kind: 'by age',
  source: 'C04',
  rows: [
    { fromMonths: 0, toMonths: 24, childrenPerAdult: 3 },
    { fromMonths: 24, toMonths: 36, childrenPerAdult: 5 },
    { fromMonths: 36, toMonths: 96, childrenPerAdult: 8, isFromMemory: true },
    { fromMonths: 96, toMonths: null, childrenPerAdult: 10, isFromMemory: true },
  ],
};
/** C06, Wales: National Minimum Standards, standard 15 (8 to 12 found, the others from memory). */
export const ratioWales: RatioTable = {
  kind: 'by age',
  source: 'C06',
  rows: [
    { fromMonths: 0, toMonths: 24, childrenPerAdult: 3, isFromMemory: true },
    { fromMonths: 24, toMonths: 36, childrenPerAdult: 4, isFromMemory: true },
    { fromMonths: 36, toMonths: 96, childrenPerAdult: 8, isFromMemory: true },
    { fromMonths: 96, toMonths: 156, childrenPerAdult: 10 },
  ],
};
/** C08, Ireland: S.I. 221/2016, schedule 6, by the kind of service (found); drop-in has no row. */
export const ratioIreland = {
  'day-care': {
    kind: 'by age',
    source: 'C08',
    rows: [
      { fromMonths: 0, toMonths: 12, childrenPerAdult: 3 },
      { fromMonths: 12, toMonths: 24, childrenPerAdult: 5 },
      { fromMonths: 24, toMonths: 36, childrenPerAdult: 6 },
      { fromMonths: 36, toMonths: 72, childrenPerAdult: 8 },
    ],
  },
  sessional: { kind: 'by age', source: 'C08', rows: [{ fromMonths: 30, toMonths: 72, childrenPerAdult: 11 }] },
} as const satisfies Readonly<Record<string, RatioTable>>;

/** C10, California: 22 CCR 101216.3, 101416.5 and the school-age section (found). Infants run to 24 months (from memory). */
export const ratioCalifornia: TeacherTable = {
  kind: 'by teacher',
  source: 'C10',
  rows: [
    { fromMonths: 0, toMonths: 24, alone: 4, withAide: 4, withQualifiedAide: 4 },
    { fromMonths: 24, toMonths: 72, alone: 12, withAide: 15, withQualifiedAide: 18 },
    { fromMonths: 72, toMonths: null, alone: 14, withAide: 28, withQualifiedAide: 28 },
  ],
};
/** C21, Caring for Our Children 1.1.1.2 (found); that mixed groups follow the youngest is from memory. */
export const ratioCfoc: RatioTable = {
  kind: 'by age',
  source: 'C21',
  isByYoungest: true,
  rows: [
    { fromMonths: 0, toMonths: 13, childrenPerAdult: 3, groupMax: 6 },
    { fromMonths: 13, toMonths: 36, childrenPerAdult: 4, groupMax: 8 },
    { fromMonths: 36, toMonths: 48, childrenPerAdult: 7, groupMax: 14 },
    { fromMonths: 48, toMonths: 60, childrenPerAdult: 8, groupMax: 16 },
    { fromMonths: 60, toMonths: 72, childrenPerAdult: 8, groupMax: 16 },
    { fromMonths: 72, toMonths: 108, childrenPerAdult: 10, groupMax: 20 },
    { fromMonths: 108, toMonths: 156, childrenPerAdult: 12, groupMax: 24 },
  ],
};
/** C25, Australia: National Regulations, reg. 123 (found). Preschool age is taken to end at 72 months (class rule). */
export const ratioAustralia: RatioTable = {
  kind: 'by age',
  source: 'C25',
  rows: [
    { fromMonths: 0, toMonths: 24, childrenPerAdult: 4 },
    { fromMonths: 24, toMonths: 36, childrenPerAdult: 5 },
    { fromMonths: 36, toMonths: 72, childrenPerAdult: 11 },
    { fromMonths: 72, toMonths: null, childrenPerAdult: 15 },
  ],
};
