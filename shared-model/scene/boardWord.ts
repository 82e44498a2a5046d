const ordinals = ['1st', '2nd', '3rd'];
/** "1st", "2nd", "3rd", "4th", … of a count from 1. */
export const sayOrdinal = (n: number): string =>
  (n % 100 > 10 && n % 100 < 14 ? undefined : ordinals[(n % 10) - 1])?.replace(/^\d/, String(n)) ?? `${n}th`;

/** How people call the boards of a shelf side, top first from 0: "top", "middle", "low"; with more boards "2nd", "3rd" … between. */
export function boardWord(index: number, count: number): string {
  if (index === 0) return 'top';
  if (index === count - 1) return 'low';
  return count === 3 ? 'middle' : sayOrdinal(index + 1);
}
