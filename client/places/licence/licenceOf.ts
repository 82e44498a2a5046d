import type { CountedFloor } from '#model/measures/countedFloor.ts';
import type { FixtureNeed } from '#model/measures/fixtureNeeds.ts';
import { fixtureNeeds, ownFixtures } from '#model/measures/fixtureNeeds.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import { rowFor } from '#model/measures/roomNeeds.ts';
import type { Classroom } from '#model/schema/types.ts';
import { categoryWords, type FloorCategory } from '#model/standards/deductionMatrix.ts';
import { fixtureCounts } from '#model/standards/fixtureCounts.ts';
import { sourceName } from '#model/standards/sources.ts';
import type { PlacesLine } from '../placesLine.ts';

/** What is taken off the floor, or is counted because the class asked; one kind of floor each. */
interface LicenceFloor {
  readonly what: string;
  /** "shelf 1, shelf 2" */
  readonly items: readonly { readonly label: string; readonly m2: number }[];
  /** m² taken off; overlaps once. 0 for what counts. */
  readonly deducted: number;
  readonly isOpen: boolean;
  readonly why: string;
}

interface LicenceGroup {
  readonly name: string;
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly count: number;
  /** m² a child, and in all; null: no figure */
  readonly each: number | null;
  readonly need: number | null;
  readonly isBeyond: boolean;
  /** "1 to 8"; "": no ratio */
  readonly ratio: string;
}

/** Everything on the licence sheet, as the report has it. Areas in m². */
export interface Licence {
  readonly ruleSet: string;
  readonly isGuideline: boolean;
  /** Keys of the rows that were used. */
  readonly sources: readonly string[];
  readonly inside: number | null;
  readonly floor: readonly LicenceFloor[];
  readonly others: readonly { readonly name: string; readonly area: number }[];
  readonly counted: number | null;
  readonly countedMost: number | null;
  readonly groups: readonly LicenceGroup[];
  readonly need: number | null;
  readonly spare: number | null;
  readonly byArea: number | null;
  readonly byAreaMost: number | null;
  readonly byAreaPerRoom: number | null;
  readonly byAdults: number | null;
  readonly byGroup: number | null;
  readonly byWork: number | null;
  /** Else `byWork` is how many were found places for. */
  readonly areMatsProven: boolean;
  readonly places: number | null;
  readonly binding: PlacesLine['binding'];
  readonly enrolled: number;
  readonly fixtures: readonly FixtureNeed[];
  /** In words: what has to be asked or entered first. */
  readonly open: readonly string[];
}

/** The licence sheet of a class, from the rule set in force and the report's line. */
export function licenceOf(classroom: Classroom, inForce: FloorPlaces, line: PlacesLine, areMatsProven: boolean): Licence {
  const { rules, counted } = inForce;
  const fixtures = fixtureNeeds(classroom, inForce.enrolled, ownFixtures(classroom));
  const sources = [
    rules.space?.source,
    counted ? rules.set?.deductionSource : null,
    rules.ratios?.source,
    ...fixtures.map(({ printed }) => printed?.source),
  ];
  return {
    ruleSet: rules.name,
    isGuideline: rules.set?.isGuideline === true,
    sources: [...new Set(sources.filter((source) => source != null))],
    inside: counted?.inside ?? null,
    floor: counted ? floorOf(counted, rules.set?.deductionSource ?? null) : [],
    others: classroom.room.otherRooms.map(({ name, area }) => ({ name, area })),
    counted: line.countedArea,
    countedMost: line.countedAreaMost,
    groups: groupsOf(classroom, inForce),
    need: line.needArea,
    spare: line.spareArea,
    byArea: line.byArea,
    byAreaMost: line.byAreaMost,
    byAreaPerRoom: line.byAreaPerRoom,
    byAdults: line.byAdults,
    byGroup: line.byGroup,
    byWork: line.byWork,
    areMatsProven,
    places: line.places,
    binding: line.binding,
    enrolled: line.enrolled,
    fixtures,
    open: openOf(inForce, line, fixtures, classroom, areMatsProven),
  };
}

/** By kind of floor in the order of the matrix; what is never floor first. What counts by the text alone is left out. */
function floorOf(counted: CountedFloor, source: string | null): LicenceFloor[] {
  const kinds = ['never', ...(Object.keys(categoryWords) as FloorCategory[])] as const;
  return kinds.flatMap((kind): LicenceFloor[] => {
    const items = counted.items.filter((item) => (item.category ?? 'never') === kind && (item.answer !== 'count' || item.isAsked));
    const [first] = items;
    if (!first) return [];
    const deducted = items.reduce((sum, item) => sum + item.deducted, 0);
    const what = kind === 'never' ? 'columns, partitions, hearths' : categoryWords[kind].replace(/^(?:a|the) /, '');
    const named = withChairsTogether(items);
    return [{ what, items: named, deducted, isOpen: first.answer === 'open', why: whyOf(first, source) }];
  });
}

/** The chairs of one table are one entry. */
function withChairsTogether(items: CountedFloor['items']): LicenceFloor['items'] {
  const named: { label: string; m2: number }[] = [];
  for (const { label, kind, area } of items) {
    const before = kind === 'chair' ? named.find((one) => one.label === label) : undefined;
    if (before) before.m2 += area;
    else named.push({ label, m2: area });
  }
  return named;
}

function whyOf({ answer, isAsked, category, code }: CountedFloor['items'][number], source: string | null): string {
  if (category === null) return 'is no floor by any rule';
  const text = code === 'X' ? 'it depends' : 'the text does not say';
  if (answer === 'open') return `${text}; the class has not answered yet`;
  if (isAsked) return `${text}; by the class's answer it ${answer === 'deduct' ? 'is deducted' : 'counts'}`;
  return `the rule takes it off${source ? ` (${sourceName(source)})` : ''}`;
}

function groupsOf({ children }: Classroom, { rules }: FloorPlaces): LicenceGroup[] {
  return children.groups
    .filter(({ count }) => count > 0)
    .map(({ name, fromMonths, toMonths, count }) => {
      const found = rules.space && rowFor(rules.space.rows, fromMonths);
      return {
        name,
        fromMonths,
        toMonths,
        count,
        each: found?.row.m2 ?? null,
        need: found ? found.row.m2 * count : null,
        isBeyond: found?.isOutside === true,
        ratio: ratioOf(rules.ratios, fromMonths),
      };
    });
}

function ratioOf(ratios: FloorPlaces['rules']['ratios'], months: number): string {
  if (ratios?.kind === 'by age') {
    const row = rowFor(ratios.rows, months)?.row;
    if (!row) return '';
    return `1 to ${row.childrenPerAdult}${row.withQualified ? `, with a qualified adult 1 to ${row.withQualified}` : ''}`;
  }
  const row = ratios && rowFor(ratios.rows, months)?.row;
  return row ? `teacher alone ${row.alone}, with an aide ${row.withAide}, with a qualified aide ${row.withQualifiedAide}` : '';
}

/** Places to work are a class rule; as long as they are not proven the visitor is told so. */
function workOf({ byWork, enrolled }: PlacesLine, areMatsProven: boolean): string[] {
  if (byWork === null) return ['how many places to work there are is not reckoned'];
  if (areMatsProven) return [];
  const lacking = enrolled - byWork;
  return [
    lacking > 0
      ? `is there a place to work for ${lacking} more? Found for ${byWork}; how many mats fit at the very most is not proven (class rule)`
      : `places to work were found for ${byWork}; how many mats fit at the very most is not proven (class rule)`,
  ];
}

function openOf(
  { rules, counted }: FloorPlaces,
  line: PlacesLine,
  fixtures: readonly FixtureNeed[],
  { ruleSet, adults }: Classroom,
  areMatsProven: boolean,
): string[] {
  const isFromMemory = Object.hasOwn(fixtureCounts, ruleSet) && fixtureCounts[ruleSet]?.isFromMemory === true;
  return [
    ...(counted ? [] : ['the walls cross or do not close: no floor can be counted']),
    ...rules.missing,
    ...line.open.map((category) => `does ${categoryWords[category]} count?`),
    ...workOf(line, areMatsProven),
    ...(rules.ratios !== null && adults.length === 0 ? ['which adults work in the room?'] : []),
    ...fixtures.filter(({ there }) => there === null).map(({ what }) => `how many ${what} are there for the children?`),
    ...fixtures
      .filter(({ least, most }) => least !== most)
      .map(({ what, least, most }) => `${least} or ${most} ${what}? The guidance says it in two ways`),
    ...(isFromMemory && fixtures.some(({ printed }) => printed) ? ['the figures for toilets and basins are from memory: check them'] : []),
  ];
}
