import type { Material, Sureness } from '../schema/types.ts';

/** One generated line: what differs from an empty material, and where it was read. mm, kg, months. */
export interface CatalogueRow extends Partial<Omit<Material, 'id' | 'name' | 'area' | 'strand' | 'catalogue' | 'state'>> {
  readonly id: string;
  readonly name: string;
  readonly area: string;
  readonly strand: string;
  /** The text where the exercise was read, by the keys of `standards` (M1912, H1914, E1917), or common practice. */
  readonly source: string;
  readonly note?: string;
}

/** A stated order of two materials that makes neither a prerequisite of the other. */
export type CataloguePair = readonly [before: string, after: string, sure: Sureness];
