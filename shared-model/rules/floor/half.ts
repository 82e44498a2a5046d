import { z } from 'zod';
import type { RuleFinding, RuleResult } from '../../findings/finding.ts';
import { coveredArea } from '../../geometry/coverage.ts';
import { isStanding } from '../../measures/overlaps.ts';
import { m2 } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

/** m²: rounding of the areas */
const EXACT = 1e-6;

export const half = defineRule({
  id: 'floor/half',
  asks: 'Is half of the floor clear?',
  why: 'Children move as they work. A room filled with furniture leaves them nowhere to go but between it.',
  tier: 'settle',
  sources: ['S1917'],
  options: z.strictObject({
    /** share of the floor that is clear of furniture */
    share: z.number().min(0).max(1).default(0.5),
  }),
  messages: {
    full: '{clear} of {floor} are clear of furniture, {share} of the floor; {needed} would be {wanted}.',
    walls: 'The walls do not hold, so how much floor is clear is not known.',
  },
  judge({ scene, options: { share } }): RuleResult {
    const { room } = scene;
    if (!room.isSound) return { applies: true, findings: [unsound] };
    const rings = scene.bodies.filter(isStanding).map((body) => body.footprint);
    const clear = room.area - coveredArea(rings, room.outline) / 1e6;
    const needed = share * room.area;
    if (clear >= needed - EXACT) return { applies: true, findings: [] };
    const data = {
      clear: m2(clear),
      floor: m2(room.area),
      share: { value: clear / room.area, unit: 'share' } as const,
      needed: m2(needed),
      wanted: share === 0.5 ? 'half' : `${Math.round(share * 100)} %`,
    };
    const common = { outcome: 'problem', severity: 'note', messageKey: 'full', subjects: ['room'] } as const;
    return { applies: true, findings: [{ ...common, data, measured: m2(clear), needed: m2(needed) }] };
  },
});

const unsound: RuleFinding = {
  outcome: 'cannot-tell',
  severity: 'note',
  messageKey: 'walls',
  data: {},
  subjects: ['room'],
  missing: ['walls that close without crossing'],
};
