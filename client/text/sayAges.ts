interface Ages {
  readonly fromMonths: number;
  readonly toMonths: number;
}

/** "ages 3 to 6"; null when nobody is entered. */
export function sayAges(groups: readonly Ages[]): string | null {
  if (groups.length === 0) return null;
  const from = Math.min(...groups.map((group) => group.fromMonths));
  const to = Math.max(...groups.map((group) => group.toMonths));
  return `ages ${sayYears(from)} to ${sayYears(to)}`;
}

/** 42 months is "3½", 40 is "3 y 4 m". */
export function sayYears(months: number): string {
  const years = Math.floor(months / 12);
  const rest = Math.round(months - years * 12);
  if (rest === 0) return String(years);
  if (rest === 6) return years === 0 ? '½' : `${years}½`;
  return `${years} y ${rest} m`;
}

export const countOf = (groups: readonly { readonly count: number }[]): number => groups.reduce((sum, group) => sum + group.count, 0);
