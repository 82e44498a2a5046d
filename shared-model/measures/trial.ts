import type { Classroom } from '../schema/types.ts';
import type { Ratios } from '../standards/childRatios.ts';
import { type AdultsMore, adultsNeeded } from './adultsNeeded.ts';
import { type ChosenRules, chooseRules } from './chosenRules.ts';
import type { CountedFloor } from './countedFloor.ts';
import { type FixtureNeed, fixtureNeeds, ownFixtures } from './fixtureNeeds.ts';
import { childrenOn, childrenWith, countOf, largestGroup, rowFor, type SpaceNeed, spaceNeed } from './roomNeeds.ts';

/** Children of one age who are promised. */
export interface Promised {
  readonly months: number;
  readonly count: number;
  /** date, as 2027-04-01; null: now */
  readonly from: string | null;
}

interface Group {
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly count: number;
}

/** What a number of children of certain ages asks of the room. Areas in m². */
export interface ClassNeeds {
  readonly children: number;
  /** null: no children, or no figure per child */
  readonly space: SpaceNeed | null;
  /** Floor left over with everything open deducted, and with all of it counted; below 0: too little. */
  readonly spare: number | null;
  readonly spareMost: number | null;
  /** Children of this mix that the floor takes, likewise. */
  readonly byArea: number | null;
  readonly byAreaMost: number | null;
  /** Fewest adults that a ratio by age asks for, one of them qualified where one is there; null: no such ratio. */
  readonly adultsAsked: number | null;
  /** Beside those there. */
  readonly adultsMore: AdultsMore | null;
  /** Children that those there may look after. */
  readonly byAdults: number | null;
  readonly byGroup: number | null;
  readonly fixtures: readonly FixtureNeed[];
}

export interface TrialResult {
  readonly rules: ChosenRules;
  /** The enrolment entry that counts on the date; null: the children now. */
  readonly entry: string | null;
  readonly before: ClassNeeds;
  readonly after: ClassNeeds;
  /** The age that was tried, months. */
  readonly months: number;
  /** m² of floor that the rule asks for a child of that age; null: no figure. */
  readonly floorEach: number | null;
  /** Ages of the class (months, up to but without `to`) where hers lies outside them; null: within, or nobody is entered. */
  readonly outsideClass: { readonly from: number; readonly to: number } | null;
  /** She is younger than everybody: reach, seats and small parts are judged for her from then on. */
  readonly isYoungest: boolean;
  /** The promised age lies beyond the rows of the table, and its nearest row is taken. */
  readonly isBeyondSpace: boolean;
  readonly isBeyondRatio: boolean;
}

/** The children on a date: the latest entry of the enrolment that has begun by then; before the first, those now. */
export function childrenOnDate(
  classroom: Pick<Classroom, 'children' | 'enrolment'>,
  date: string | null,
): { readonly entry: string | null; readonly groups: readonly Group[] } {
  const begun = date === null ? [] : classroom.enrolment.filter(({ from }) => from <= date);
  const latest = begun.reduce<(typeof begun)[number] | null>(
    (last, entry) => (last === null || entry.from >= last.from ? entry : last),
    null,
  );
  return latest ? { entry: latest.from, groups: latest.groups } : { entry: null, groups: classroom.children.groups };
}

/** The groups with the promised children among them: one month of age wide, so that they take the row of their own age. */
export function withPromised<T extends Group>(groups: readonly T[], { months, count }: Promised, make: (group: Group) => T): T[] {
  const same = groups.find((group) => group.fromMonths === months && group.toMonths === months + 1);
  if (same) return groups.map((group) => (group === same ? { ...group, count: group.count + count } : group));
  return [...groups, make({ fromMonths: months, toMonths: months + 1, count })];
}

/** Before and after, on the floor that counts in the room as it stands. Changes nothing. */
export function tryPromised(classroom: Classroom, counted: CountedFloor | null, promised: Promised): TrialResult {
  const rules = chooseRules(classroom);
  const { entry, groups } = childrenOnDate(classroom, promised.from);
  const enrolled = groups.filter(({ count }) => count > 0);
  const beyond = (rows: Parameters<typeof rowFor>[0] | undefined): boolean =>
    rows !== undefined && rowFor(rows, promised.months)?.isOutside === true;
  return {
    rules,
    entry,
    before: needsOf(classroom, rules, counted, groups),
    after: needsOf(
      classroom,
      rules,
      counted,
      withPromised(groups, promised, (group) => group),
    ),
    months: promised.months,
    floorEach: (rules.space && rowFor(rules.space.rows, promised.months)?.row.m2) ?? null,
    outsideClass: outside(enrolled, promised.months),
    isYoungest: promised.count > 0 && enrolled.every(({ fromMonths }) => promised.months < fromMonths),
    isBeyondSpace: beyond(rules.space?.rows),
    isBeyondRatio: beyond(rules.ratios?.rows),
  };
}

function outside(groups: readonly Group[], months: number): TrialResult['outsideClass'] {
  if (groups.length === 0) return null;
  const from = Math.min(...groups.map(({ fromMonths }) => fromMonths));
  const to = Math.max(...groups.map(({ toMonths }) => toMonths));
  return months < from || months >= to ? { from, to } : null;
}

function askedByAge(ratios: Ratios, groups: readonly Group[], there: Classroom['adults']): number | null {
  const first = there.some(({ role, count }) => role === 'qualified' && count > 0) ? [{ role: 'qualified' as const, count: 1 }] : [];
  const more = adultsNeeded(ratios, groups, first);
  return more && more.count + first.length;
}

function needsOf(classroom: Classroom, rules: ChosenRules, counted: CountedFloor | null, groups: readonly Group[]): ClassNeeds {
  const { space: table, ratios } = rules;
  const there = classroom.adults;
  const children = countOf(groups);
  const space = table && spaceNeed(groups, table);
  const takes = (area: number | undefined): number | null => (area === undefined || !space ? null : childrenOn(area, space.perChild));
  const left = (area: number | undefined): number | null => (area === undefined || !space ? null : area - space.need);
  return {
    children,
    space,
    spare: left(counted?.least),
    spareMost: left(counted?.most),
    byArea: takes(counted?.least),
    byAreaMost: takes(counted?.most),
    adultsAsked: ratios?.kind === 'by age' ? askedByAge(ratios, groups, there) : null,
    adultsMore: ratios && adultsNeeded(ratios, groups, there),
    byAdults: ratios && childrenWith(groups, there, ratios),
    byGroup: largestGroup(groups, table, ratios),
    fixtures: fixtureNeeds(classroom, children, ownFixtures(classroom)),
  };
}
