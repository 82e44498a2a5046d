import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { measureOccupants } from '../../measures/occupants.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { m2 } from '../../units/quantity.ts';
import { sayDecimal } from '../../units/round.ts';
import { defineRule } from '../rule.ts';

const notAdvice = 'A figure for planning exits, no licensed number. Not legal advice: your licensing authority decides.';
/** Persons: rounding when the floor divides exactly. */
const EXACT = 1e-6;

export const occupants = defineRule({
  id: 'places/occupants',
  asks: 'Are no more people in the room than the building code reckons with?',
  why: 'The exits of a building are planned for so many people in each room. With more of them a way out may be too narrow when all have to leave.',
  tier: 'settle',
  sources: ['B01', 'B02', 'class rule'],
  options: z.strictObject({
    /** m² net a person; null: the code's figure */
    perPerson: z.number().positive().max(1000).nullable().default(null),
  }),
  messages: {
    more: `{persons} people, children and adults, are more than the {load} that the model building code reckons with on {net} at {per} each. ${notAdvice}`,
    rounding: `{persons} people are more than {exact} and no more than {load}, as the model building code reckons on {net} at {per} each: whether a part counts as one more is disputed. ${notAdvice}`,
    walls: `How many people the building code reckons with is not known: the walls do not hold. ${notAdvice}`,
  },
  judge({ scene, options: { perPerson } }): RuleResult {
    const { exitRules, ruleSet, children } = scene.classroom;
    const isAsked = exitRules === 'us-ibc' || perPerson !== null || (exitRules === null && ruleSet.startsWith('us-'));
    if (!isAsked || countOf(children.groups) === 0) return doesNotApply;
    const found = measureOccupants(scene, perPerson);
    if (!found) return { applies: true, findings: [unsound] };
    const { net, perPerson: per, load, persons, source } = found;
    if (persons <= load + EXACT) return { applies: true, findings: [] };
    const whole = Math.ceil(load - EXACT);
    const isMore = persons > whole;
    const common = {
      severity: 'note',
      subjects: ['room'],
      data: { persons, load: whole, exact: sayDecimal(load, 2), net: m2(net), per: m2(per) },
      measured: { value: persons, unit: 'places' },
      needed: { value: whole, unit: 'places' },
      sources: [source],
    } as const;
    if (isMore) return { applies: true, findings: [{ ...common, outcome: 'problem', messageKey: 'more' }] };
    const missing = ['ask your building authority whether a part of a person counts as one more'];
    return { applies: true, findings: [{ ...common, outcome: 'cannot-tell', messageKey: 'rounding', missing }] };
  },
});

const unsound: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'note',
  messageKey: 'walls',
  data: {},
  subjects: ['room'],
  missing: ['mend the walls: they cross or do not close'],
};
