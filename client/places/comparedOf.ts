import type { FloorPlaces } from '#model/measures/floorPlaces.ts';

/**
 * The rule set beside the one in force, which is the first of the sets: the chosen one; else the strictest that takes
 * another number; null: there is no other.
 */
export function comparedOf(sets: readonly FloorPlaces[], chosen: string | null): FloorPlaces | null {
  const [inForce, ...others] = sets;
  const strictest = others
    .filter(({ byArea }) => byArea !== null && byArea !== inForce?.byArea)
    .sort((p, q) => (p.byArea ?? 0) - (q.byArea ?? 0))[0];
  return others.find(({ rules }) => rules.id === chosen) ?? strictest ?? others[0] ?? null;
}
