import { z } from 'zod';
import { doesNotApply, type RuleFinding } from '../../findings/finding.ts';
import { measurePockets } from '../../measures/pockets.ts';
import { sayPlace } from '../../measures/wayWords.ts';
import { m2 } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const body = z.number().min(50).max(2000);

export const pocket = defineRule({
  id: 'sight/pocket',
  asks: 'Can an adult follow wherever a child can get?',
  why: 'A child who slips into a gap that no adult fits into can be neither helped nor fetched out without moving furniture.',
  tier: 'settle',
  sources: ['class rule'],
  options: z.strictObject({
    /** mm, diameter of a child's body */
    child: body.default(300),
    /** mm, diameter of an adult's body */
    adult: body.default(500),
    /** m²; smaller patches are corners of the floor, not pockets */
    least: z.number().min(0).max(100).default(0.1),
  }),
  messages: {
    pocket: '{area} of floor {place} is open to a child, but an adult, {adult} wide, does not fit in.',
    walls: 'Where bodies fit is not known: the walls cross each other or enclose nothing.',
    door: 'Where bodies get to is not known: no door or passage is drawn.',
  },
  judge({ scene, options }) {
    if (!scene.room.isSound) return unknown('walls', 'walls that close and do not cross');
    if (!scene.room.openings.some((opening) => opening.isWayIn)) return unknown('door', 'where the doors and passages are');
    if (options.child >= options.adult) return doesNotApply;
    const pockets = measurePockets(scene, options.child, options.adult).filter(({ area }) => area / 1e6 >= options.least);
    const findings = pockets.map(({ area, at, between }): RuleFinding => {
      const measured = m2(area / 1e6);
      const place = sayPlace(scene, ...between);
      const data = { area: measured, place, adult: { value: options.adult, unit: 'mm' } } as const;
      const things = [...new Set(between)].filter((id) => scene.bodyById.has(id)).sort();
      const subjects = things.length > 0 ? things : ['room'];
      return { outcome: 'problem', severity: 'note', messageKey: 'pocket', data, subjects, measured, at };
    });
    return { applies: true, findings };
  },
});

function unknown(messageKey: 'walls' | 'door', missing: string) {
  const finding: RuleFinding = {
    outcome: 'cannot-tell',
    severity: 'note',
    messageKey,
    data: {},
    subjects: ['room'],
    missing: [missing],
  };
  return { applies: true, findings: [finding] };
}
