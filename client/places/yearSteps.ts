import { dayOf } from '../text/sayDay.ts';
import type { PlacesLine } from './placesLine.ts';

/** A line of the report's enrolment over the year; the limits are those of its own mix of ages. */
export type YearEntry = PlacesLine['year'][number];

/** One step of the enrolment: this many children from a date until the next. */
export interface YearStep extends Pick<YearEntry, 'children' | 'byArea' | 'byAreaMost'> {
  readonly from: Date;
  /** entered: an entry in force or past; promised: one to come; now: the class as it is, where no entry is in force. */
  readonly kind: 'entered' | 'promised' | 'now';
}
export interface Year {
  readonly start: Date;
  readonly end: Date;
  readonly today: Date;
  readonly steps: readonly YearStep[];
}

const MONTH = 30.44 * 24 * 3600 * 1000;

/** Entries that begin after today, in the order of their dates; those with no date in them are left out. */
export function laterEntries<T extends { readonly from: string }>(entries: readonly T[], today: Date): T[] {
  return entries
    .filter(({ from }) => dayOf(from).getTime() > today.getTime())
    .sort((p, q) => dayOf(p.from).getTime() - dayOf(q.from).getTime());
}

/**
 * The year that is drawn: from the first date (or today) to two months after the last, the entries as they are given.
 * The children counted now are no entry: only where none is in force do they stand from today on.
 */
export function yearOf(line: Pick<PlacesLine, 'enrolled' | 'byArea' | 'byAreaMost' | 'year'>, today: Date): Year {
  const entered = line.year
    .map(({ from, children, byArea, byAreaMost }) => ({ from: dayOf(from), children, byArea, byAreaMost }))
    .filter(({ from }) => !Number.isNaN(from.getTime()))
    .sort((p, q) => p.from.getTime() - q.from.getTime())
    .map((entry): YearStep => ({ ...entry, kind: entry.from <= today ? 'entered' : 'promised' }));
  const hasPast = entered[0]?.kind === 'entered';
  const { enrolled: children, byArea, byAreaMost } = line;
  const steps: YearStep[] = hasPast ? entered : [{ from: today, children, byArea, byAreaMost, kind: 'now' }, ...entered];
  const first = steps[0]?.from ?? today;
  const last = entered.at(-1)?.from ?? today;
  const start = monthOf(new Date(Math.min(first.getTime(), today.getTime()) - (hasPast ? 0 : MONTH)));
  const end = new Date(Math.max(last.getTime(), today.getTime()) + 2 * MONTH);
  return { start, end, today, steps };
}

/** The entry in force today; null: none is. */
export const inForceOf = ({ steps }: Year): YearStep | null => steps.findLast(({ kind }) => kind === 'entered') ?? null;

/** The firsts of the months in the drawn year. */
export function monthsOf({ start, end }: Year): Date[] {
  const months: Date[] = [];
  for (let month = monthOf(start); month <= end; month = new Date(month.getFullYear(), month.getMonth() + 1, 1)) months.push(month);
  return months;
}

const monthOf = (date: Date): Date => new Date(date.getFullYear(), date.getMonth(), 1);

/** px that a line of words needs above or below a line of the chart */
const WORDS = 17;

/** px: where the foot of a limit's words stands, above its line unless another line would strike them through there and not below. */
export function wordsBeside(line: number, others: readonly number[]): number {
  const isFree = (from: number, to: number): boolean => others.every((other) => other <= from || other >= to);
  return isFree(line - WORDS, line) || !isFree(line, line + WORDS) ? line - 5 : line + 14;
}
