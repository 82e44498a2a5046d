import { z } from 'zod';
import type { MessageValue, RuleFinding, RuleResult } from '../../findings/finding.ts';
import type { CountedFloor } from '../../measures/countedFloor.ts';
import type { FloorPlaces, YearPlaces } from '../../measures/floorPlaces.ts';
import type { SpaceNeed } from '../../measures/roomNeeds.ts';
import { categoryWords, type FloorCategory } from '../../standards/deductionMatrix.ts';
import { sayDate } from '../../units/day.ts';
import { m2 } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** m² of counted floor a child; null: the rule set's own figure */
  perChild: z.number().positive().max(1000).nullable().default(null),
});

const notAdvice = 'Not legal advice: your licensing authority decides.';
/** m²: rounding noise where the need is exactly met. */
const EXACT = 1e-9;

export const area = defineRule({
  id: 'places/area',
  asks: 'Is there floor enough for the children enrolled?',
  why: 'A licence allows so many children for so much floor; too many in a room leave no place to work in peace.',
  tier: 'settle',
  sources: ['C01', 'C03', 'C05', 'C07', 'C09', 'C11', 'C12', 'C13', 'C14', 'C15', 'C16', 'C19', 'C20', 'C23', 'C24', 'C26', 'class rule'],
  options,
  messages: {
    over: `{children} children need {need} of floor under the rule of {rule}; {counted} of {inside} counts, enough for {places}.{notes} ${notAdvice}`,
    later: `From {from} {children} children need {need} of floor under the rule of {rule}; {counted} counts, enough for {places}.{notes} ${notAdvice}`,
    laterMore: `From {from} {children} children need {need} of floor under the rule of {rule}; {counted} counts, enough for {places}. Most is asked from {worstFrom}: {worst} children need {worstNeed}.{notes} ${notAdvice}`,
    depends: `The rule of {rule} leaves open whether some floor counts: {counted} at least, {most} at most, and {children} children need {need}.{notes} ${notAdvice}`,
    laterDepends: `From {from} {children} children need {need}; the rule of {rule} leaves open whether {counted} or {most} counts.{notes} ${notAdvice}`,
    notTold: `How many children the floor takes cannot be reckoned yet. ${notAdvice}`,
  },
  judge({ measures }): RuleResult {
    const floor = measures.floorPlaces();
    const { counted, need, rules } = floor;
    const missing = missingOf(floor);
    if (!counted || !rules.space || missing.length > 0) return { applies: true, findings: [notTold(missing)] };
    const year = measures.placesOverYear();
    const now = need ? judgeOne(floor, counted, need, null) : [];
    // An entry that asks no more than the children now says nothing new.
    const more = now.length === 0 || !need ? year : year.filter((line) => line.need && line.need.need > need.need + EXACT);
    return { applies: true, findings: [...now, ...judgeYear(floor, counted, more)] };
  },
});

function missingOf({ rules, counted, enrolled }: FloorPlaces): string[] {
  return [
    ...(counted ? [] : ['mend the walls: they cross or do not close']),
    ...rules.missing,
    ...(enrolled === 0 ? ['give the ages and the number of the children'] : []),
  ];
}

const notTold = (missing: readonly string[]): RuleFinding => ({
  outcome: 'cannot-tell',
  severity: 'must',
  messageKey: 'notTold',
  data: {},
  subjects: ['classroom'],
  missing,
});

/** The first date on which the floor is too small, with the one on which most is asked; without one, the first on which it cannot be told. */
function judgeYear(floor: FloorPlaces, counted: CountedFloor, year: readonly YearPlaces[]): RuleFinding[] {
  const found = year.flatMap((line) => (line.need ? judgeOne(floor, counted, line.need, line) : []));
  const first = found.find((finding) => finding.outcome === 'problem');
  if (!first) return found.slice(0, 1);
  const asked = year.flatMap(({ from, children, need }) => (need ? [{ from, children, need: need.need }] : []));
  const most = asked.reduce((worst, one) => (one.need > worst.need + EXACT ? one : worst));
  if (!(most.need > (first.needed?.value ?? Infinity) + EXACT)) return [first];
  const more = { worst: most.children, worstFrom: sayDate(most.from), worstNeed: m2(most.need) };
  return [{ ...first, messageKey: 'laterMore', data: { ...first.data, ...more } }];
}

/** Judges the children now (`later` null) or from a date on. */
function judgeOne(floor: FloorPlaces, counted: CountedFloor, need: SpaceNeed, later: YearPlaces | null): RuleFinding[] {
  if (need.need <= counted.least + EXACT) return [];
  const isOver = need.need > counted.most + EXACT;
  const { byArea, byAreaMost, children } = later ?? { ...floor, children: floor.enrolled };
  const data: Record<string, MessageValue> = {
    children,
    need: m2(need.need),
    rule: floor.rules.isOwnFigure ? 'the class' : floor.rules.name,
    counted: m2(isOver ? counted.most : counted.least),
    most: m2(counted.most),
    inside: m2(counted.inside + counted.others),
    places: sayPlaces(byArea, byAreaMost),
    notes: sayNotes(floor, need, later === null),
    ...(later && { from: sayDate(later.from) }),
  };
  return [
    {
      outcome: isOver ? 'problem' : 'cannot-tell',
      severity: 'must',
      messageKey: isOver ? (later ? 'later' : 'over') : later ? 'laterDepends' : 'depends',
      data,
      subjects: ['classroom'],
      ...(later && { part: 'later' }),
      measured: m2(isOver ? counted.most : counted.least),
      needed: m2(need.need),
      sources: sourcesOf(floor),
      ...(!isOver && { missing: counted.open.map(sayQuestion) }),
    },
  ];
}

const sayPlaces = (least: number | null, most: number | null): string =>
  least === most ? `${most ?? 0}` : `${least ?? 0} to ${most ?? 0}`;
const sayQuestion = (category: FloorCategory): string => `ask your licensing authority whether ${categoryWords[category]} counts`;

/** Sentences that a figure must not go without. */
function sayNotes({ rules, counted, byArea, byAreaMost, byAreaPerRoom }: FloorPlaces, need: SpaceNeed, isNow: boolean): string {
  const notes = [
    need.isBeyondTable ? ' Some children are outside the ages of its table and reckoned by the nearest row.' : '',
    need.isFromMemory ? ' Its figure is from memory: check it.' : '',
    rules.set?.isGuideline && !rules.isOwnFigure ? ' It is a guideline, no law.' : '',
    counted && byAreaMost !== null && byArea !== null && byAreaMost > byArea
      ? ` Between the two it depends on ${counted.open.length === 1 ? 'one question' : `${counted.open.length} questions`} under "Where the rules do not say" in The class.`
      : '',
    isNow && byAreaPerRoom !== null && byAreaPerRoom !== byArea ? ` Rounded down room by room it is enough for ${byAreaPerRoom}.` : '',
  ];
  return notes.join('');
}

function sourcesOf({ rules }: FloorPlaces): string[] {
  const found = [rules.space?.source, rules.set?.deductionSource].filter((source) => source != null);
  return [...new Set(found)];
}
