import type { fixtureRows } from './sources/fixtureRows.ts';

/** Children that one toilet and one basin serve; null: no figure was read. */
export interface FixtureCount {
  readonly perToilet: number;
  readonly perBasin: number | null;
  /** Fewest toilets that the text asks for, however few the children. */
  readonly leastToilets?: number;
  /** The text says "or part thereof", its worked example rounds to the nearest: both are right until somebody asks. */
  readonly exampleRounds?: true;
  readonly isFromMemory?: true;
  /** Key of its source. */
  readonly source: keyof typeof fixtureRows;
}

/** D10, by rule set: toilets and basins (part found). Rule sets without a line have no figure. */
export const fixtureCounts: Readonly<Record<string, FixtureCount>> = {
  /** 22 CCR 101239: 15 or a fraction of it (found). */
  'us-california': { perToilet: 15, perBasin: 15, source: 'D10-california' },
  /** 8 NYCRR 125.2 (found). */
  'us-new-york': { perToilet: 15, perBasin: 15, source: 'D10-new-york' },
  /** COMAR 13A.17.05.08 (found). */
  'us-maryland': { perToilet: 15, perBasin: 15, source: 'D10-maryland' },
  /** Space to Grow, appendix 1, children over two (found; its sentence and its example round differently). */
  scotland: { perToilet: 10, perBasin: null, leastToilets: 4, exampleRounds: true, source: 'D10-scotland' },
  /** Older guidance, children over two; the framework in force only asks for an adequate number. */
  england: { perToilet: 10, perBasin: 10, isFromMemory: true, source: 'D10-england' },
  /** 26 TAC 746, from a scraped page. */
  'us-texas': { perToilet: 17, perBasin: null, source: 'D10-texas' },
};
