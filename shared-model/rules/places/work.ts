import { z } from 'zod';
import { doesNotApply, type RuleResult } from '../../findings/finding.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** places to work for each child */
  perChild: z.number().positive().max(10).default(1),
});
const notAdvice = 'A class rule, not legal advice: your licensing authority decides how many children may be in the room.';

export const work = defineRule({
  id: 'places/work',
  asks: 'Is there a place to work for every child?',
  why: 'A child who has chosen something needs a seat or a mat for it; without one it is carried about or put back.',
  tier: 'settle',
  sources: ['class rule'],
  options,
  messages: {
    tooFew: `{seats} seats and at most {mats} mats make {work} places to work; {children} children ask for {needed}. ${notAdvice}`,
    notProven: `{seats} seats and at least {mats} mats make {work} places to work, perhaps {most}; {children} children ask for {needed}. ${notAdvice}`,
  },
  judge({ scene, measures, options: { perChild } }): RuleResult {
    const children = countOf(scene.classroom.children.groups);
    if (children === 0) return doesNotApply;
    const { seats, mats, least, most } = measures.workPlaces();
    const needed = Math.ceil(children * perChild - 1e-9);
    if (least >= needed) return { applies: true, findings: [] };
    const isTooFew = most < needed;
    const common = {
      severity: 'should',
      subjects: ['classroom'],
      measured: { value: isTooFew ? most : least, unit: 'places' },
      needed: { value: needed, unit: 'places' },
    } as const;
    const data = { seats, children, needed };
    if (isTooFew)
      return {
        applies: true,
        findings: [{ ...common, outcome: 'problem', messageKey: 'tooFew', data: { ...data, mats: mats.upperBound, work: most } }],
      };
    const missing = [
      scene.room.isSound ? 'have the number of mats proven, or find room for more of them' : 'mend the walls: they cross or do not close',
    ];
    return {
      applies: true,
      findings: [
        {
          ...common,
          outcome: 'cannot-tell',
          messageKey: 'notProven',
          data: { ...data, mats: mats.count, work: least, most: Number.isFinite(most) ? most : 'more' },
          missing,
        },
      ],
    };
  },
});
