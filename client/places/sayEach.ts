import type { SpaceNeed } from '#model/measures/roomNeeds.ts';
import { sayDecimal } from '#model/units/round.ts';
import { type LengthUnits, sayArea } from '#model/units/sayLength.ts';

/** "2.30 m² a child"; of several ages each as its rule has it: "2.50 m² at age 2, 2.30 m² from 3". A mean is no rule's figure. */
export function sayEach({ rows }: Pick<SpaceNeed, 'rows'>, units: LengthUnits): string {
  const [only] = rows;
  if (rows.length === 1 && only) return `${sayPerChild(only.m2, units)} a child`;
  return rows.map(({ m2, fromMonths }, i) => `${sayArea(m2, units)} ${i === 0 ? sayFirst(rows) : `from ${age(fromMonths)}`}`).join(', ');
}

/** "7 × 2.30 + 1 × 2.50 = 18.60 m²" */
export function sayNeedSum({ rows, need }: Pick<SpaceNeed, 'rows' | 'need'>, units: LengthUnits): string {
  return `${rows.map(({ count, m2 }) => `${count} × ${bare(m2, units)}`).join(' + ')} = ${sayArea(need, units)}`;
}

/** "2.30 to 2.50" */
export function sayEachBare({ rows }: Pick<SpaceNeed, 'rows'>, units: LengthUnits): string {
  const figures = rows.map(({ m2 }) => m2);
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  return least === most ? bare(least, units) : `${bare(least, units)} to ${bare(most, units)}`;
}

const bare = (m2: number, units: LengthUnits): string => sayArea(m2, units).replace(/ .*$/, '');
const age = (months: number): string => (months % 12 === 0 ? String(months / 12) : `${months} months`);

/** The youngest row up to where the next begins. */
function sayFirst(rows: SpaceNeed['rows']): string {
  const [from, next] = [rows[0]?.fromMonths ?? 0, rows[1]?.fromMonths ?? 0];
  if (from % 12 === 0 && next - from === 12) return `at age ${from / 12}`;
  return `under ${age(next)}`;
}

/** What one child needs; a figure that another unit makes uneven to a third place, so that a quotient is right: "2.787 m²" for 30 sq ft. */
export const sayPerChild = (m2: number, units: LengthUnits): string =>
  units === 'metric' && Math.abs(m2 - Math.round(m2 * 100) / 100) > 5e-4 ? `${sayDecimal(m2, 3)} m²` : sayArea(m2, units);
