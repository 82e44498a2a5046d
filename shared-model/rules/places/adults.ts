import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { adultsNeeded, MOST_ADULTS, roleWord } from '../../measures/adultsNeeded.ts';
import { type ChosenRules, chooseRules } from '../../measures/chosenRules.ts';
import { type AdultGroup, type AgeGroup, childrenWith, countOf, largestGroup } from '../../measures/roomNeeds.ts';
import type { Scene } from '../../scene/types.ts';
import type { Ratios } from '../../standards/childRatios.ts';
import { sayDate } from '../../units/day.ts';
import { defineRule } from '../rule.ts';

const notAdvice = 'Not legal advice: your licensing authority decides.';

export const adults = defineRule({
  id: 'places/adults',
  asks: 'Are there adults enough for the children enrolled?',
  why: 'With too many children to an adult somebody is always waiting, and nobody sees what happens at the other end of the room.',
  tier: 'live',
  sources: ['C02', 'C04', 'C06', 'C08', 'C10', 'C21', 'C25'],
  options: z.strictObject({}),
  messages: {
    over: `{children} children are more than the {takes} that {adults} may look after under the rule of {rule}: {more}.{notes} ${notAdvice}`,
    later: `From {from} {children} children are more than the {takes} that {adults} may look after under the rule of {rule}: {more}.{notes} ${notAdvice}`,
    group: `{children} children are more than the {takes} that may be together in one room under the rule of {rule}.{notes} ${notAdvice}`,
    noAdults: `How many children the adults may look after is not known. ${notAdvice}`,
    noService: `Which ratio of {rule} counts depends on the kind of service. ${notAdvice}`,
  },
  judge({ scene }): RuleResult {
    const rules = chooseRules(scene.classroom);
    const { groups } = scene.classroom.children;
    const children = countOf(groups);
    const most = largestGroup(groups, rules.space, rules.ratios);
    // A kind of service that has no row has no ratio; while it is not said which kind it is, there may be one.
    const hasRatio = rules.ratios !== null || (rules.set?.ratios != null && scene.classroom.service === null);
    if (children === 0 || (!hasRatio && most === null)) return doesNotApply;
    const tooLarge = most !== null && children > most ? [groupFinding(rules, groups, most)] : [];
    return { applies: true, findings: [...(hasRatio ? ratioFindings(scene, rules) : []), ...tooLarge] };
  },
});

const must = { severity: 'must', subjects: ['classroom'] } as const;
const inChildren = (value: number) => ({ value, unit: 'children' }) as const;

function ratioFindings({ classroom }: Scene, rules: ChosenRules): RuleFinding[] {
  const { ratios } = rules;
  if (!ratios)
    return [{ ...must, outcome: 'cannot-tell', messageKey: 'noService', data: { rule: rules.name }, missing: serviceMissing(rules) }];
  const there = classroom.adults;
  if (countOf(there) === 0)
    return [
      {
        ...must,
        outcome: 'cannot-tell',
        messageKey: 'noAdults',
        data: {},
        missing: ['give the adults who work in the room, and their roles'],
      },
    ];
  const now = judgeOne(rules, ratios, classroom.children.groups, there, null);
  const later = [...classroom.enrolment]
    .sort((p, q) => (p.from < q.from ? -1 : p.from > q.from ? 1 : 0))
    .flatMap(({ from, groups }) => judgeOne(rules, ratios, groups, there, from))
    .slice(0, 1);
  return [...now, ...later];
}

const serviceMissing = ({ set }: ChosenRules): string[] => [`say what kind of service it is: ${Object.keys(set?.ratios ?? {}).join(', ')}`];

/** Judges the children now (`from` null) or from a date on. */
function judgeOne(
  rules: ChosenRules,
  ratios: Ratios,
  groups: readonly AgeGroup[],
  there: readonly AdultGroup[],
  from: string | null,
): RuleFinding[] {
  const children = countOf(groups);
  const takes = childrenWith(groups, there, ratios);
  if (takes === null || children <= takes) return [];
  const data = {
    children,
    takes,
    adults: sayAdults(there),
    rule: rules.name,
    more: sayMore(ratios, groups, there),
    notes: sayNotes(rules, ratios, groups),
  };
  return [
    {
      ...must,
      outcome: 'problem',
      messageKey: from === null ? 'over' : 'later',
      data: from === null ? data : { ...data, from: sayDate(from) },
      ...(from !== null && { part: 'later' }),
      measured: inChildren(takes),
      needed: inChildren(children),
      sources: [ratios.source],
    },
  ];
}

const sayAdults = (there: readonly AdultGroup[]): string => `${countOf(there)} ${countOf(there) === 1 ? 'adult' : 'adults'}`;

/** The fewest more adults of one role that are enough. */
function sayMore(ratios: Ratios, groups: readonly AgeGroup[], there: readonly AdultGroup[]): string {
  const needed = adultsNeeded(ratios, groups, there);
  if (!needed) return `more than ${MOST_ADULTS} more would be needed`;
  return `${needed.count} ${roleWord(ratios, needed.role)}${needed.count === 1 ? ' more is' : 's more are'} needed`;
}

/** Sentences that a figure must not go without. */
function sayNotes({ set }: ChosenRules, ratios: Ratios, groups: readonly AgeGroup[]): string {
  const isFromMemory =
    ratios.kind === 'by age' &&
    groups.some(({ fromMonths, count }) => {
      const row = ratios.rows.find((r) => fromMonths >= r.fromMonths && (r.toMonths === null || fromMonths < r.toMonths));
      return count > 0 && row?.isFromMemory === true;
    });
  return `${isFromMemory ? ' Its figure is from memory: check it.' : ''}${set?.isGuideline ? ' It is a guideline, no law.' : ''}`;
}

function groupFinding(rules: ChosenRules, groups: readonly AgeGroup[], most: number): RuleFinding {
  const { ratios, space } = rules;
  const source = space?.roomMax === most ? space.source : (ratios?.source ?? space?.source ?? 'class rule');
  return {
    ...must,
    outcome: 'problem',
    messageKey: 'group',
    data: { children: countOf(groups), takes: most, rule: rules.name, notes: rules.set?.isGuideline ? ' It is a guideline, no law.' : '' },
    part: 'group',
    measured: inChildren(countOf(groups)),
    needed: inChildren(most),
    sources: [source],
  };
}
