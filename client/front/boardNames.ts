/** How people call the boards of a shelf side, top first: Top, Middle, Low; with more boards 2nd, 3rd … between. */
export function boardName(index: number, count: number): string {
  if (index === 0) return 'Top';
  if (index === count - 1) return 'Low';
  return count === 3 ? 'Middle' : ordinal(index + 1);
}

/** "top board", as it stands within a sentence. */
export const boardInWords = (index: number, count: number): string => `${boardName(index, count).toLowerCase()} board`;

/** 1st, 2nd, 3rd, 4th, 11th, 21st … */
export function ordinal(n: number): string {
  const lastTwo = n % 100;
  if (lastTwo >= 11 && lastTwo <= 13) return `${n}th`;
  return `${n}${{ 1: 'st', 2: 'nd', 3: 'rd' }[n % 10] ?? 'th'}`;
}
