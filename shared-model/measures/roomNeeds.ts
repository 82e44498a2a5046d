import type { Ratios, RatioTable, TeacherTable } from '../standards/childRatios.ts';
import type { SpaceTable } from '../standards/spacePerChild.ts';

/** Children of one age group; months. */
export interface AgeGroup {
  readonly fromMonths: number;
  readonly count: number;
}
export interface AdultGroup {
  readonly role: 'lead' | 'qualified' | 'assistant';
  readonly count: number;
}

/** Rounding noise when an area divides exactly. */
const EXACT = 1e-9;
/** The whole number of children that a share of them fits into. */
const wholeChildren = (children: number): number => Math.floor(children + EXACT);

export const countOf = (groups: readonly { readonly count: number }[]): number => groups.reduce((sum, group) => sum + group.count, 0);

interface AgeRow {
  readonly fromMonths: number;
  readonly toMonths: number | null;
}
/** The row of an age; beyond the last row the last one holds, before the first the first. Null: the table is empty. */
export function rowFor<Row extends AgeRow>(rows: readonly Row[], months: number): { row: Row; isOutside: boolean } | null {
  const found = rows.find((row) => months >= row.fromMonths && (row.toMonths === null || months < row.toMonths));
  if (found) return { row: found, isOutside: false };
  const first = rows[0];
  const last = rows[rows.length - 1];
  if (!first || !last) return null;
  return { row: months < first.fromMonths ? first : last, isOutside: true };
}

export interface SpaceNeed {
  /** m² that the children need */
  readonly need: number;
  /** m² a child, with this mix of ages */
  readonly perChild: number;
  /** The figures that make it up, m² a child, the youngest first; each with the age its row begins at and how many take it. */
  readonly rows: readonly { readonly m2: number; readonly fromMonths: number; readonly count: number }[];
  /** Some children are outside the ages of the table and reckoned by its nearest row. */
  readonly isBeyondTable: boolean;
  /** The figure of some child was not read in a stored page. */
  readonly isFromMemory: boolean;
}

/** Floor that children need under a table; each group takes the row of its `fromMonths`. Null: no children. */
export function spaceNeed(groups: readonly AgeGroup[], table: SpaceTable): SpaceNeed | null {
  const children = countOf(groups);
  if (children === 0) return null;
  const rows = groups.flatMap(({ fromMonths, count }) => {
    const found = count > 0 ? rowFor(table.rows, fromMonths) : null;
    return found ? [{ ...found, count }] : [];
  });
  const need = rows.reduce((sum, { row, count }) => sum + row.m2 * count, 0);
  return {
    need,
    perChild: need / children,
    rows: byFigure(rows.map(({ row, count }) => ({ m2: row.m2, fromMonths: row.fromMonths, count }))),
    isBeyondTable: rows.some((r) => r.isOutside),
    isFromMemory: rows.some((r) => r.row.isFromMemory === true),
  };
}

/** Neighbouring rows of one figure as one. */
function byFigure(rows: SpaceNeed['rows']): SpaceNeed['rows'] {
  const merged: { m2: number; fromMonths: number; count: number }[] = [];
  for (const row of [...rows].sort((p, q) => p.fromMonths - q.fromMonths)) {
    const last = merged.at(-1);
    if (last?.m2 === row.m2) last.count += row.count;
    else merged.push({ ...row });
  }
  return merged;
}

/** m² a child where a table asks the same of every age; null: it depends on the ages. */
export function evenSpace({ rows }: SpaceTable): number | null {
  const first = rows[0];
  return first && rows.every((row) => row.m2 === first.m2) ? first.m2 : null;
}

/** The most children of the same mix that a floor (m²) takes: rounded down. */
export const childrenOn = (area: number, perChild: number): number => wholeChildren(area / perChild);

/** The most children of the same mix that these adults may look after; null: no children, no adults or no row. */
export function childrenWith(groups: readonly AgeGroup[], adults: readonly AdultGroup[], ratios: Ratios): number | null {
  if (countOf(groups) === 0 || countOf(adults) === 0) return null;
  return ratios.kind === 'by age' ? byAge(groups, adults, ratios) : byTeacher(groups, adults, ratios);
}

const inRole = (adults: readonly AdultGroup[], role: AdultGroup['role']): number => countOf(adults.filter((a) => a.role === role));

/** Each child asks for a share of an adult, by its own age or by the youngest; the shares add up. */
function byAge(groups: readonly AgeGroup[], adults: readonly AdultGroup[], { rows, isByYoungest }: RatioTable): number | null {
  const isQualified = inRole(adults, 'qualified') > 0;
  const enrolled = groups.filter((group) => group.count > 0);
  const youngest = Math.min(...enrolled.map((group) => group.fromMonths));
  const perChild = shareOfAdult(enrolled, (months) => {
    const row = rowFor(rows, isByYoungest ? youngest : months)?.row;
    return row && (isQualified ? (row.withQualified ?? row.childrenPerAdult) : row.childrenPerAdult);
  });
  return perChild === null ? null : wholeChildren(countOf(adults) / perChild);
}

/**
 * Teachers (lead) each with a qualified aide (qualified) while there are any, then with an aide (assistant), then
 * alone. Aides without a teacher add nothing.
 */
function byTeacher(groups: readonly AgeGroup[], adults: readonly AdultGroup[], { rows }: TeacherTable): number | null {
  const enrolled = groups.filter((group) => group.count > 0);
  let teachers = inRole(adults, 'lead');
  let children = 0;
  for (const [aides, kind] of [
    [inRole(adults, 'qualified'), 'withQualifiedAide'],
    [inRole(adults, 'assistant'), 'withAide'],
    [Infinity, 'alone'],
  ] as const) {
    const units = Math.min(teachers, aides);
    const perChild = shareOfAdult(enrolled, (months) => rowFor(rows, months)?.row[kind]);
    if (perChild === null) return null;
    children += units / perChild;
    teachers -= units;
  }
  return wholeChildren(children);
}

/** The share of an adult that the average child asks for. */
function shareOfAdult(groups: readonly AgeGroup[], ratioAt: (months: number) => number | undefined): number | null {
  let shares = 0;
  for (const { fromMonths, count } of groups) {
    const ratio = ratioAt(fromMonths);
    if (ratio === undefined) return null;
    shares += count / ratio;
  }
  return shares / countOf(groups);
}

/** The largest group that the tables allow in one room, by the youngest; null: they say nothing. */
export function largestGroup(groups: readonly AgeGroup[], space: SpaceTable | null, ratios: Ratios | null): number | null {
  const enrolled = groups.filter((group) => group.count > 0);
  const limits: number[] = [];
  if (space?.roomMax !== undefined) limits.push(space.roomMax);
  if (ratios?.kind === 'by age' && enrolled.length > 0) {
    const youngest = Math.min(...enrolled.map((group) => group.fromMonths));
    const most = rowFor(ratios.rows, youngest)?.row.groupMax;
    if (most !== undefined) limits.push(most);
  }
  return limits.length === 0 ? null : Math.min(...limits);
}
