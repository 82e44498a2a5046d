import { sayOrdinal } from '#model/measures/placeWords.ts';

/** How people call the boards of a shelf side, top first: Top, Middle, Low; with more boards 2nd, 3rd … between. */
export function boardName(index: number, count: number): string {
  if (index === 0) return 'Top';
  if (index === count - 1) return 'Low';
  return count === 3 ? 'Middle' : sayOrdinal(index + 1);
}
