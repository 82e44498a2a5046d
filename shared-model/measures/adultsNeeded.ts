import type { Ratios } from '../standards/childRatios.ts';
import { type AdultGroup, type AgeGroup, childrenWith, countOf } from './roomNeeds.ts';

/** More adults than this are not counted up to. */
export const MOST_ADULTS = 100;

/** Adults of one role. */
export interface AdultsMore {
  readonly role: 'assistant' | 'lead';
  readonly count: number;
}

/**
 * The fewest adults of one role, beside those there, that may look after the children; count 0: those there are
 * enough. A lead alone counts least, so one is named only where it takes a lead. Null: more than 100, or the table
 * has no row.
 */
export function adultsNeeded(ratios: Ratios, groups: readonly AgeGroup[], there: readonly AdultGroup[]): AdultsMore | null {
  const children = countOf(groups);
  if (children <= (childrenWith(groups, there, ratios) ?? 0)) return { role: 'assistant', count: 0 };
  for (let count = 1; count <= MOST_ADULTS; count++) {
    for (const role of ['assistant', 'lead'] as const) {
      const takes = childrenWith(groups, [...there, { role, count }], ratios);
      if (takes !== null && takes >= children) return { role, count };
    }
  }
  return null;
}

/** "lead teacher", "assistant", or "adult" where the roles count alike. */
export function roleWord(ratios: Ratios, role: AdultsMore['role']): string {
  if (ratios.kind !== 'by teacher') return 'adult';
  return role === 'lead' ? 'lead teacher' : 'assistant';
}
