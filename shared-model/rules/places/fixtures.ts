import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { type FixtureNeed, fixtureNeeds } from '../../measures/fixtureNeeds.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { ruleSetOf } from '../../standards/ruleSets.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** children to a toilet and to a basin; null: the rule set's figure */
  perToilet: z.number().positive().max(1000).nullable().default(null),
  perBasin: z.number().positive().max(1000).nullable().default(null),
});
const notAdvice = 'Not legal advice: your licensing authority decides.';

export const fixtures = defineRule({
  id: 'places/fixtures',
  asks: 'Are there toilets and basins enough for the children enrolled?',
  why: 'A child who has to wait for a toilet does not make it, and hands that wait for a basin are not washed.',
  tier: 'live',
  sources: ['D10', 'class rule'],
  options,
  messages: {
    tooFew: `{children} children need {needed} {what}, one for {per}; {there} counted.{notes} ${notAdvice}`,
    depends: `{children} children need {least} toilets as the example of {rule} rounds, {needed} by its sentence; {there} counted. ${notAdvice}`,
    notCounted: `How many {what} there are for the children is not known. ${notAdvice}`,
  },
  judge({ scene, options: own }): RuleResult {
    const { classroom } = scene;
    const children = countOf(classroom.children.groups);
    const asked = fixtureNeeds(classroom, children, own);
    if (children === 0 || asked.length === 0) return doesNotApply;
    const rule = ruleSetOf(classroom.ruleSet)?.name ?? classroom.ruleSet;
    return { applies: true, findings: asked.flatMap((one) => judgeOne(one, children, rule)) };
  },
});

function judgeOne(asked: FixtureNeed, children: number, rule: string): RuleFinding[] {
  const { what, there, per, printed, least, most } = asked;
  const common = {
    severity: 'should',
    subjects: ['room'],
    part: what,
    sources: [printed?.source ?? 'class rule'],
  } as const;
  if (there === null)
    return [
      { ...common, outcome: 'cannot-tell', messageKey: 'notCounted', data: { what }, missing: [`count the ${what} for the children`] },
    ];
  if (there >= most) return [];
  const figures = { measured: { value: there, unit: 'places' }, needed: { value: there < least ? least : most, unit: 'places' } } as const;
  if (there >= least) {
    const missing = ['ask your licensing authority how many toilets it wants: the guidance says it in two ways'];
    return [
      {
        ...common,
        ...figures,
        outcome: 'cannot-tell',
        messageKey: 'depends',
        data: { children, least, needed: most, there, rule },
        missing,
      },
    ];
  }
  const notes = printed?.isFromMemory
    ? ` The figure is older guidance of ${rule}, from memory: check it.`
    : printed
      ? ` The rule of ${rule}.`
      : ' A class rule.';
  return [{ ...common, ...figures, outcome: 'problem', messageKey: 'tooFew', data: { children, needed: least, what, per, there, notes } }];
}
