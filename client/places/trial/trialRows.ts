import { type AdultsMore, MOST_ADULTS, roleWord } from '#model/measures/adultsNeeded.ts';
import type { FixtureNeed } from '#model/measures/fixtureNeeds.ts';
import type { ClassNeeds, TrialResult } from '#model/measures/trial.ts';
import { sayYearsAndMonths } from '#model/units/sayAge.ts';
import { type LengthUnits, sayArea } from '#model/units/sayLength.ts';
import { sayYears } from '../../text/sayAges.ts';

export interface TrialRow {
  readonly text: string;
  readonly before: string;
  readonly after: string;
  /** With the promised children there is not enough. */
  readonly isShort: boolean;
  /** There was not enough before. */
  readonly wasShort: boolean;
}

/** m²: rounding where the need is just met */
const EXACT = 1e-9;

/** What changes when they come, one line a limit. `byWork`: seats and the mats found; null: not reckoned. */
export function trialRows({ before, after, rules }: TrialResult, byWork: number | null, units: LengthUnits): TrialRow[] {
  const pair = (
    text: string,
    say: (needs: ClassNeeds) => string | null,
    short: (needs: ClassNeeds) => boolean = () => false,
  ): TrialRow[] => {
    const [p, q] = [say(before), say(after)];
    if (p === null && q === null) return [];
    return [{ text, before: p ?? '–', after: q ?? '–', isShort: short(after), wasShort: short(before) }];
  };
  const adults = ({ role, count }: AdultsMore): string => {
    const word = rules.ratios ? roleWord(rules.ratios, role) : 'adult';
    return count === 0 ? 'none' : `${count} ${word}${count === 1 ? '' : 's'}`;
  };
  const more = ({ adultsMore }: ClassNeeds): string | null =>
    rules.ratios === null ? null : adultsMore === null ? `more than ${MOST_ADULTS}` : adults(adultsMore);
  const takes = ({ byArea, byAreaMost }: ClassNeeds): string | null =>
    byArea === null ? null : byAreaMost !== null && byAreaMost > byArea ? `${byArea} to ${byAreaMost}` : String(byArea);
  const figure = (value: number | null): string | null => (value === null ? null : String(value));
  return [
    ...pair('Children', ({ children }) => String(children)),
    ...pair('Floor they need', ({ space }) => space && sayArea(space.need, units)),
    ...pair('Floor left over', (needs) => saySpare(needs, units), hasTooLittle),
    ...pair('The floor takes, of such a mix', takes, hasTooLittle),
    ...pair('Adults the rule asks for', ({ adultsAsked }) => figure(adultsAsked)),
    ...pair('Adults wanting, beside those there', more, needsAdults),
    ...pair('Those there may look after', ({ byAdults }) => figure(byAdults), needsAdults),
    ...pair('Largest group in one room', ({ byGroup }) => figure(byGroup), isTooMany),
    ...after.fixtures.flatMap((need) =>
      pair(
        need.what === 'toilets' ? 'Toilets' : 'Wash basins',
        ({ fixtures }) => {
          const own = fixtures.find(({ what }) => what === need.what);
          return own ? sayFixture(own) : null;
        },
        ({ fixtures }) => fixtures.some(({ what, there, least }) => what === need.what && there !== null && there < least),
      ),
    ),
    ...(byWork === null
      ? []
      : pair(
          'Places to work found',
          () => String(byWork),
          ({ children }) => byWork < children,
        )),
  ];
}

const isBelow = (spare: number | null): boolean => spare !== null && spare < -EXACT;
const hasTooLittle = ({ spare }: ClassNeeds): boolean => isBelow(spare);
const isTooMany = ({ byGroup, children }: ClassNeeds): boolean => byGroup !== null && children > byGroup;
const needsAdults = ({ adultsMore, byAdults }: ClassNeeds): boolean => byAdults !== null && adultsMore !== null && adultsMore.count > 0;

function saySpare({ spare, spareMost }: ClassNeeds, units: LengthUnits): string | null {
  if (spare === null || spareMost === null) return null;
  const say = (m2: number): string => (isBelow(m2) ? `${sayArea(-m2, units)} too little` : sayArea(Math.max(0, m2), units));
  return spareMost > spare + EXACT ? `${say(spare)}, or ${say(spareMost)}` : say(spare);
}

function sayFixture({ least, most, there }: FixtureNeed): string {
  const needed = least === most ? `${most} needed` : `${least} or ${most} needed`;
  return `${needed}, ${there === null ? 'not counted' : `${there} there`}`;
}

/** In sentences: what is not enough with them, what is new since they came, and what to know of their age. */
export function sayTrial(result: TrialResult, byWork: number | null, units: LengthUnits): string[] {
  const { before, after, rules } = result;
  const said: string[] = [];
  if (isBelow(after.spareMost)) {
    const short = sayArea(-(after.spareMost ?? 0), units);
    const was = isBelow(before.spareMost) ? ` It was so before, by ${sayArea(-(before.spareMost ?? 0), units)}.` : '';
    said.push(`The floor is too small by ${short}.${was}`);
  } else if (isBelow(after.spare)) said.push('Whether the floor is enough depends on questions to your authority that are still open.');
  if (needsAdults(after) && after.adultsMore) {
    const { role, count } = after.adultsMore;
    const word = rules.ratios ? roleWord(rules.ratios, role) : 'adult';
    said.push(
      `${count} ${word}${count === 1 ? '' : 's'} more ${count === 1 ? 'is' : 'are'} needed${before.adultsMore?.count ? ', some of them already now' : ''}.`,
    );
  }
  if (isTooMany(after)) said.push(`A group may have no more than ${after.byGroup}.`);
  for (const { what, there, least } of after.fixtures)
    if (there !== null && there < least) said.push(`${least} ${what} are needed, ${there} are there.`);
  if (byWork !== null && byWork < after.children)
    said.push(`Places to work were found for ${byWork} of ${after.children}; that is no licensing limit.`);
  if (said.length === 0)
    said.push(after.byArea === null && after.byAdults === null ? 'Whether they fit cannot be told yet.' : 'They fit, as far as is known.');
  return [...sayNeed(result, units), ...said, ...sayAge(result)];
}

/** What a child of her age asks of the floor, and that the class is for other ages, before what follows from it. */
function sayNeed({ rules, months, floorEach, isBeyondSpace, outsideClass }: TrialResult, units: LengthUnits): string[] {
  const age = sayYearsAndMonths(months);
  return [
    ...(floorEach === null
      ? []
      : [
          `A child of ${age} needs ${sayArea(floorEach, units)} of floor by the rule of ${rules.name}${isBeyondSpace ? ', nearest row' : ''}.`,
        ]),
    ...(outsideClass ? [`That age is outside the class: it has ages ${sayYears(outsideClass.from)} to ${sayYears(outsideClass.to)}.`] : []),
  ];
}

function sayAge({ rules, after, isYoungest, isBeyondSpace, isBeyondRatio }: TrialResult): string[] {
  const tables = [...(isBeyondSpace ? ['floor'] : []), ...(isBeyondRatio ? ['adults'] : [])];
  return [
    ...(tables.length > 0
      ? [`That age lies beyond the rows of ${rules.name} for ${tables.join(' and ')}: the nearest row was taken. Ask your authority.`]
      : []),
    ...(after.space?.isFromMemory ? ['The floor a child is a figure from memory: check it.'] : []),
    ...(isYoungest ? ['She would be the youngest: reach, sight lines, seats and small parts are judged for her from then on.'] : []),
    ...rules.missing.map((what) => `First: ${what}.`),
  ];
}
