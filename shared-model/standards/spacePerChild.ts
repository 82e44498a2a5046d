/** m² in a square foot, exact. */
const M2_PER_SQ_FT = 0.3048 * 0.3048;
const sqFt = (squareFeet: number): number => squareFeet * M2_PER_SQ_FT;

/** Floor that a child of an age needs. Ages in months, from included, to not. */
interface SpaceRow {
  readonly fromMonths: number;
  /** null: and older */
  readonly toMonths: number | null;
  /** m² of counted floor a child; of a figure in square feet the exact conversion, not the rounded one */
  readonly m2: number;
  readonly sqFt?: number;
  /** The figure itself was not read in a stored page: a class rule here. */
  readonly isFromMemory?: true;
}
/** A published table of floor per child. */
export interface SpaceTable {
  /** Row of the index. */
  readonly source: string;
  readonly rows: readonly SpaceRow[];
  /** Most children in one room, where the table says so. */
  readonly roomMax?: number;
}

const everyAge = (source: string, squareFeet: number, isFromMemory?: true): SpaceTable => ({
  source,
  rows: [{ fromMonths: 0, toMonths: null, m2: sqFt(squareFeet), sqFt: squareFeet, ...(isFromMemory && { isFromMemory }) }],
});

/** C01, England: early years framework, section 3, premises (found second-hand). */
export const spaceEngland: SpaceTable = {
  source: 'C01',
  rows: [
    { fromMonths: 0, toMonths: 24, m2: 3.5 },
    { fromMonths: 24, toMonths: 36, m2: 2.5 },
    { fromMonths: 36, toMonths: 72, m2: 2.3 },
  ],
};
/** C03, Scotland: Space to Grow, appendix 1 (found). */
export const spaceScotland: SpaceTable = {
  source: 'C03',
  rows: [
    { fromMonths: 0, toMonths: 24, m2: 3.7 },
    { fromMonths: 24, toMonths: 36, m2: 2.8 },
    { fromMonths: 36, toMonths: null, m2: 2.3 },
  ],
};
/** C05, Wales: National Minimum Standards (found; under 8 in a forum's quotation of an older text). */
export const spaceWales: SpaceTable = {
  source: 'C05',
  rows: [
    { fromMonths: 0, toMonths: 24, m2: 3.7 },
    { fromMonths: 24, toMonths: 36, m2: 2.8 },
    { fromMonths: 36, toMonths: 96, m2: 2.3 },
    { fromMonths: 96, toMonths: 156, m2: 2.3 },
  ],
};
/** C07, Ireland: S.I. 221/2016, schedule 7, by the kind of service (found). */
export const spaceIreland = {
  'day-care': {
    source: 'C07',
    rows: [
      { fromMonths: 0, toMonths: 12, m2: 3.5 },
      { fromMonths: 12, toMonths: 24, m2: 2.8 },
      { fromMonths: 24, toMonths: 36, m2: 2.35 },
      { fromMonths: 36, toMonths: 72, m2: 2.3 },
    ],
  },
  sessional: { source: 'C07', rows: [{ fromMonths: 0, toMonths: 72, m2: 1.818 }], roomMax: 22 },
  'drop-in': { source: 'C07', rows: [{ fromMonths: 0, toMonths: 72, m2: 1.818 }], roomMax: 24 },
} as const satisfies Readonly<Record<string, SpaceTable>>;

/** C09, California: 22 CCR 101238.3 (found). */
export const spaceCalifornia = everyAge('C09', 35);
/** C11, New York, nursery schools: 8 NYCRR 125.2 (found). */
export const spaceNewYork = everyAge('C11', 35);
/** C12, Texas: 26 TAC 746 (30 sq ft from memory). */
export const spaceTexas = everyAge('C12', 30, true);
/** C13, Florida: 65C-22.002 (found second-hand); 20 sq ft where licensed on or before 1 October 1992. */
export const spaceFlorida = everyAge('C13', 35);
/** C14, Massachusetts: 606 CMR 7.07 (found). */
export const spaceMassachusetts = everyAge('C14', 35);
/** C15, Washington State: WAC 110-300-0354 (found); a crib in the play area asks for 15 sq ft more, not reckoned here. */
export const spaceWashington = everyAge('C15', 35);
/** C16, Maryland: COMAR 13A.17.05.03 (found). */
export const spaceMaryland = everyAge('C16', 35);
/** C19, Montana: ARM 37.95.610 (found). */
export const spaceMontana = everyAge('C19', 35);
/** C20, Caring for Our Children 5.1.2.1, a guideline (found): 42 sq ft at least, 50 preferred. */
export const spaceCfoc = everyAge('C20', 42);
/** C23, Australia: National Regulations, reg. 107 (found). */
export const spaceAustralia: SpaceTable = { source: 'C23', rows: [{ fromMonths: 0, toMonths: null, m2: 3.25 }] };
/** C26, New Zealand: Early Childhood Services Regulations 2008, schedule 4 (found). */
export const spaceNewZealand: SpaceTable = { source: 'C26', rows: [{ fromMonths: 0, toMonths: null, m2: 2.5 }] };
