import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { sayDecimal } from '#model/units/round.ts';
import { type LengthUnits, sayArea } from '#model/units/sayLength.ts';
import type { PlacesLine } from './placesLine.ts';
import { sayEach, sayNeedSum, sayPerChild } from './sayEach.ts';

/** One way of asking how many, in words. */
export interface LimitRow {
  /** limit: an arrow in ink; other: of a rule that is not in force, in pencil */
  readonly kind: 'children' | 'limit' | 'work' | 'other';
  readonly title: string;
  readonly sub: string;
  /** The reckoning; "": none */
  readonly words: string;
  /** children; null: not told */
  readonly value: number | null;
  /** Fewer than are enrolled. */
  readonly isShort: boolean;
}

interface Asked {
  readonly line: PlacesLine;
  readonly inForce: FloorPlaces | null;
  readonly other: FloorPlaces | null;
  readonly units: LengthUnits;
  /** months, one a child */
  readonly ages: readonly number[];
}

/** The rows of the places drawing, from the children down to the rule it is compared with. */
export function limitRowsOf({ line, inForce, other, units, ages }: Asked): LimitRow[] {
  const row = (title: string, value: number | null, rest: Partial<LimitRow>): LimitRow => ({
    kind: 'limit',
    title,
    sub: '',
    words: '',
    value,
    isShort: value !== null && value < line.enrolled,
    ...rest,
  });
  const rows = [row('Children', line.enrolled, { kind: 'children', sub: sayEnrolled(ages) })];
  if (inForce) {
    const sub = inForce.need ? `${sayEach(inForce.need, units)}, ${inForce.rules.name}` : inForce.rules.name;
    rows.push(row('Floor, rule in force', line.byArea, { sub, words: floorWords(inForce, units) }));
  }
  if (line.byWork !== null) rows.push(row('Places to work', line.byWork, { kind: 'work', sub: 'seats and mats, no licensing limit' }));
  const adults = line.byAdults === null ? 'no adults, or no ratio in this rule' : 'children they may look after';
  rows.push(row('Adults', line.byAdults, { sub: adults }));
  if (line.byGroup !== null) rows.push(row('Largest group', line.byGroup, { sub: 'allowed in one room' }));
  if (other)
    rows.push(
      row('Floor, another rule', other.byArea, { kind: 'other', sub: other.rules.name, words: floorWords(other, units), isShort: false }),
    );
  return rows;
}

/** "enrolled: 7 aged 3, 9 aged 4" */
function sayEnrolled(ages: readonly number[]): string {
  const byYear = new Map<number, number>();
  for (const months of ages) byYear.set(Math.floor(months / 12), (byYear.get(Math.floor(months / 12)) ?? 0) + 1);
  const parts = [...byYear].sort(([p], [q]) => p - q).map(([year, count]) => `${count} aged ${year}`);
  return parts.length === 0 ? 'enrolled' : `enrolled: ${parts.join(', ')}`;
}

function floorWords({ counted, need, byArea, byAreaMost, rules }: FloorPlaces, units: LengthUnits): string {
  if (!counted) return 'the walls cross: no floor to count';
  if (!need) return rules.missing[0] ?? 'no children entered';
  const area =
    counted.most > counted.least ? `${sayArea(counted.least, units)} to ${sayArea(counted.most, units)}` : sayArea(counted.least, units);
  if (need.rows.length > 1) return `${area} counted; ${sayNeedSum(need, units)} needed`;
  const takes = byAreaMost !== null && byArea !== null && byAreaMost > byArea ? `${byArea} to ${byAreaMost}` : null;
  return `${area} counted ÷ ${sayPerChild(need.perChild, units)} = ${takes ?? sayQuotient(counted.least, need.perChild, byArea, units)}`;
}

/** Only what the printed figures give; where rounding hides that, the whole children. */
function sayQuotient(area: number, perChild: number, takes: number | null, units: LengthUnits): string {
  const [p, q] = [sayArea(area, units), sayPerChild(perChild, units)].map((said) => Number.parseFloat(said.replaceAll(',', '')));
  const printed = (p ?? 0) / (q ?? 1);
  return Math.floor(printed) === takes ? sayDecimal(printed, 2) : `about ${takes ?? 0}`;
}
