import type { CountedFloor } from '#model/measures/countedFloor.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { categoryWords, type FloorCategory } from '#model/standards/deductionMatrix.ts';

export interface FloorRow {
  readonly text: string;
  /** m² taken off; null: nothing; 'open': the rule does not say and the class has not answered. */
  readonly inForce: Cell;
  readonly other: Cell;
}
export type Cell = { readonly m2: number; readonly isOpen: boolean } | null;

/** What two rules take off, by kind of floor, in the order of the matrix; what neither touches is left out. */
export function floorRows(inForce: FloorPlaces, other: FloorPlaces | null): FloorRow[] {
  const first = sums(inForce.counted);
  const second = sums(other?.counted ?? null);
  const never = 'never';
  const keys = [...(Object.keys(categoryWords) as FloorCategory[]), never] as const;
  return keys.flatMap((key): FloorRow[] => {
    const a = first.get(key) ?? null;
    const b = second.get(key) ?? null;
    if (a === null && b === null) return [];
    return [{ text: key === never ? 'columns, partitions, hearths' : shorter(categoryWords[key as FloorCategory]), inForce: a, other: b }];
  });
}

/** "the floor under tables and chairs" -> "under tables and chairs" */
const shorter = (words: string): string => words.replace(/^the floor /, '').replace(/^(?:a|the) /, '');

function sums(counted: CountedFloor | null): Map<string, NonNullable<Cell>> {
  const byKey = new Map<string, { m2: number; isOpen: boolean }>();
  for (const item of counted?.items ?? []) {
    if (item.answer === 'count' || item.deducted <= 0) continue;
    const key = item.category ?? 'never';
    const sum = byKey.get(key) ?? { m2: 0, isOpen: false };
    byKey.set(key, { m2: sum.m2 + item.deducted, isOpen: sum.isOpen || item.answer === 'open' });
  }
  return byKey;
}
