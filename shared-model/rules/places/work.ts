import { z } from 'zod';
import { doesNotApply, type RuleResult } from '../../findings/finding.ts';
import { countOf } from '../../measures/roomNeeds.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** places to work for each child */
  perChild: z.number().positive().max(10).default(1),
});
const notAdvice = 'A class rule, not legal advice: your licensing authority decides how many children may be in the room.';

const many = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

export const work = defineRule({
  id: 'places/work',
  asks: 'Is there a place to work for every child?',
  why: 'A child who has chosen something needs a seat or a mat for it; without one it is carried about or put back.',
  tier: 'settle',
  sources: ['class rule'],
  options,
  messages: {
    tooFew: `{seats} and {mats} make {work} places to work, {most} at the very most; {children} children ask for {needed}. ${notAdvice}`,
    noFloor: `{seats} are fewer than the {needed} places to work that {children} children ask for, and how many mats fit is not known. ${notAdvice}`,
    notProven: `{seats} and {mats} make {work} places to work, perhaps {most}; {children} children ask for {needed}. ${notAdvice}`,
  },
  judge({ scene, measures, options: { perChild } }): RuleResult {
    const children = countOf(scene.classroom.children.groups);
    if (children === 0) return doesNotApply;
    const { seats, mats, least, most } = measures.workPlaces();
    const needed = Math.ceil(children * perChild - 1e-9);
    if (least >= needed) return { applies: true, findings: [] };
    const common = {
      severity: 'should',
      subjects: ['classroom'],
      measured: { value: least, unit: 'places' },
      needed: { value: needed, unit: 'places' },
    } as const;
    const data = { seats: many(seats, 'seat'), children, needed };
    if (!mats) {
      const missing = ['mend the walls: they cross or do not close'];
      return { applies: true, findings: [{ ...common, outcome: 'cannot-tell', messageKey: 'noFloor', data, missing }] };
    }
    const figures = { ...data, mats: many(mats.count, 'mat'), work: least, most };
    if (most < needed) return { applies: true, findings: [{ ...common, outcome: 'problem', messageKey: 'tooFew', data: figures }] };
    const short = needed - least;
    const missing = [
      `${short === 1 ? 'a place for 1 more child' : `places for ${short} more children`}: lay the mats out in the room and see whether the ways stay open, or set out more seats`,
    ];
    return { applies: true, findings: [{ ...common, outcome: 'cannot-tell', messageKey: 'notProven', data: figures, missing }] };
  },
});
