/** One step of the enrolment: this many children from a date until the next. */
export interface YearStep {
  readonly from: Date;
  readonly children: number;
  readonly isPromised: boolean;
}
export interface Year {
  readonly start: Date;
  readonly end: Date;
  readonly today: Date;
  readonly steps: readonly YearStep[];
}

const MONTH = 30.44 * 24 * 3600 * 1000;

/** The year that is drawn: from the first date (or today) to two months after the last. Entries with no date in them are left out. */
export function yearOf(enrolled: number, entries: readonly { readonly from: string; readonly children: number }[], today: Date): Year {
  const dated = entries
    .map((entry) => ({ from: new Date(`${entry.from}T00:00:00`), children: entry.children }))
    .filter((entry) => !Number.isNaN(entry.from.getTime()))
    .sort((p, q) => p.from.getTime() - q.from.getTime());
  const past = dated.filter((entry) => entry.from <= today);
  const first = dated[0]?.from ?? today;
  const last = dated.at(-1)?.from ?? today;
  const start = monthOf(new Date(Math.min(first.getTime(), today.getTime()) - (past.length > 0 ? 0 : MONTH)));
  const end = new Date(Math.max(last.getTime(), today.getTime()) + 2 * MONTH);
  const steps: YearStep[] = [
    ...past.map((entry) => ({ ...entry, isPromised: false })),
    // What is enrolled now is what is counted, whatever was promised for this time.
    { from: past.length > 0 ? today : start, children: enrolled, isPromised: false },
    ...dated.filter((entry) => entry.from > today).map((entry) => ({ ...entry, isPromised: true })),
  ];
  return { start, end, today, steps };
}

/** The firsts of the months in the drawn year. */
export function monthsOf({ start, end }: Year): Date[] {
  const months: Date[] = [];
  for (let month = monthOf(start); month <= end; month = new Date(month.getFullYear(), month.getMonth() + 1, 1)) months.push(month);
  return months;
}

const monthOf = (date: Date): Date => new Date(date.getFullYear(), date.getMonth(), 1);
