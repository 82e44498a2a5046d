/** An age in months as people say it: "3 years 0 months". */
export function sayYearsAndMonths(months: number): string {
  const years = Math.floor(months / 12);
  const rest = Math.round(months - years * 12);
  return `${years} ${years === 1 ? 'year' : 'years'} ${rest} ${rest === 1 ? 'month' : 'months'}`;
}
