import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { accessFigures } from '../../measures/accessFigures.ts';
import { measureTurning } from '../../measures/turning.ts';
import { access as accessSchema } from '../../schema/classroom.ts';
import { leastThatMeets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const printed = accessSchema.parse({}).turning;

export const turn = defineRule({
  id: 'way/turn',
  asks: 'Is there floor to turn a wheelchair?',
  why: 'Somebody who cannot turn has to leave the room backwards, past everybody at work.',
  tier: 'settle',
  sources: ['A05', 'A06'],
  options: z.strictObject({
    /** look for a T-turn where no circle is free */
    tee: z.boolean().default(true),
  }),
  messages: {
    none: 'No circle of {needed} is free that the route leads to, nor a T to turn in; the widest is {widest}. Your local authority decides.',
    noCircle: 'No circle of {needed} is free that the route leads to; the widest is {widest}. Your local authority decides.',
    walls: 'Whether a wheelchair can turn is not known: the walls cross each other or enclose nothing.',
    door: 'Whether a wheelchair can turn is not known: no door or passage is drawn.',
  },
  judge({ scene, options }): RuleResult {
    if (!accessFigures(scene).isRequired) return doesNotApply;
    if (!scene.room.openings.some((opening) => opening.isWayIn)) return unknown('door', 'where the doors and passages are');
    const { turning } = scene.classroom.access;
    const isPrinted = turning === printed;
    const enough = leastThatMeets(turning, isPrinted);
    // A class that sets a circle of its own has no T to go with it.
    const withTee = isPrinted && options.tee;
    const found = measureTurning(scene, enough, withTee);
    if (!found) return unknown('walls', 'walls that close and do not cross');
    const widest = found.disc?.diameter ?? 0;
    if (found.isEnough || found.tee) return { applies: true, findings: [] };
    const finding: RuleFinding = {
      outcome: 'problem',
      severity: 'should',
      messageKey: withTee ? 'none' : 'noCircle',
      data: { needed: mm(turning), widest: mm(widest) },
      subjects: ['room'],
      measured: mm(widest),
      needed: mm(turning),
      ...(found.disc && { at: found.disc.center }),
    };
    return { applies: true, findings: [finding] };
  },
});

function unknown(messageKey: 'walls' | 'door', missing: string): RuleResult {
  const finding = { outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] } as const;
  return { applies: true, findings: [finding] };
}
