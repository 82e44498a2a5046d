import { describe, expect, it } from 'vitest';
import { sayYear } from '#client/places/sayYear.ts';
import { inForceOf, laterEntries, monthsOf, wordsBeside, type YearEntry, yearOf } from '#client/places/yearSteps.ts';

const today = new Date('2027-01-15T12:00:00');
const entry = (from: string, children: number, change: Partial<YearEntry> = {}): YearEntry => ({
  from,
  children,
  byArea: 23,
  byAreaMost: 23,
  over: Math.max(0, children - 23),
  ...change,
});
const entries = [entry('2027-04-01', 26), entry('2026-09-01', 21), entry('some day', 99)];
const line = (year: readonly YearEntry[], enrolled = 24) => ({ enrolled, byArea: 23, byAreaMost: 23, year: [...year] });
const told = (year: readonly YearEntry[], enrolled = 24) => sayYear(yearOf(line(year, enrolled), today), line(year, enrolled));

describe('the year as steps', () => {
  it('draws the entries as they are given, in the order of their dates, and leaves out what is no date', () => {
    const { steps } = yearOf(line(entries), today);
    expect(steps.map(({ children, kind }) => [children, kind])).toEqual([
      [21, 'entered'],
      [26, 'promised'],
    ]);
  });

  it('never lets children leave because the class counts otherwise than the entry in force', () => {
    const year = yearOf(line([entry('2026-09-01', 26)], 24), today);
    expect(year.steps.map(({ children }) => children)).toEqual([26]);
    expect(inForceOf(year)?.children).toBe(26);
  });

  it('draws the class from today on where no entry is in force', () => {
    const none = yearOf(line([]), today);
    expect(none.steps.map(({ children, kind, from }) => [children, kind, from])).toEqual([[24, 'now', today]]);
    expect(none.start < today && none.end > today).toBe(true);
    expect(inForceOf(none)).toBeNull();
    expect(yearOf(line([entry('2027-04-01', 26)]), today).steps.map(({ kind }) => kind)).toEqual(['now', 'promised']);
  });

  it('names every month that is drawn', () => {
    const months = monthsOf(yearOf(line(entries), today)).map((month) => month.getMonth() + 1);
    expect(months).toEqual([9, 10, 11, 12, 1, 2, 3, 4, 5]);
  });

  it('takes for promised only what is to come', () => {
    expect(laterEntries([entry('2027-09-01', 20), ...entries, entry('2027-01-15', 25)], today).map(({ from }) => from)).toEqual([
      '2027-04-01',
      '2027-09-01',
    ]);
  });
});

describe('the year in words', () => {
  it('says for now and for each later entry how many too many, or that they fit', () => {
    expect(told([entry('2026-09-01', 24), entry('2027-04-01', 26), entry('2027-09-01', 20)])).toBe(
      'Now: 24, 1 too many for the floor. From 1 April 2027: 26, 3 too many for the floor. From 1 September 2027: 20, which fits the floor.',
    );
    expect(told([], 20)).toBe('Now: 20, which fits the floor. Nobody is promised for later.');
  });

  it('says that the entry in force and the class differ', () => {
    expect(told([entry('2026-09-01', 26)])).toBe(
      'Now: 24, 1 too many for the floor. The entry in force, from 1 September 2026, says 26: mend one of the two. Nobody is promised for later.',
    );
  });

  it('goes by the mix of ages of each entry and leaves open what is open', () => {
    expect(told([entry('2027-04-01', 26, { byArea: 28, byAreaMost: 28 })])).toContain('26, which fits the floor.');
    expect(told([entry('2027-04-01', 26, { byAreaMost: 27 })])).toContain(
      '26, and whether that fits the floor depends on the open questions.',
    );
    expect(told([entry('2027-04-01', 26, { byAreaMost: 25 })])).toContain('26, 1 to 3 too many for the floor.');
    expect(told([entry('2027-04-01', 26, { byArea: null, byAreaMost: null })])).toContain('26, but what the floor takes is not known.');
  });
});

describe('the words of a limit', () => {
  it('stand above its line, below it where another line would go through them', () => {
    expect(wordsBeside(100, [])).toBe(95);
    expect(wordsBeside(100, [92])).toBe(114);
    expect(wordsBeside(100, [120])).toBe(95);
    // Struck through either way: above, on paper of their own.
    expect(wordsBeside(100, [92, 110])).toBe(95);
  });
});
