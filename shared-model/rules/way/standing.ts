import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { lerp } from '../../geometry/vec.ts';
import { accessFigures } from '../../measures/accessFigures.ts';
import { measureStandingPlaces, type StandingPlace } from '../../measures/standingPlaces.ts';
import { targetsOf } from '../../measures/targets.ts';
import { sayTarget } from '../../measures/wayWords.ts';
import { accessibleRoutes } from '../../standards/accessibleRoutes.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const { clearFloor } = accessibleRoutes;

export const standing = defineRule({
  id: 'way/standing',
  asks: 'Can a wheelchair stand before every front?',
  why: 'A child chooses from what she can stop before. Where the wheelchair does not fit, somebody else has to choose for her.',
  tier: 'settle',
  sources: ['A07', 'A08'],
  options: z.strictObject({}),
  messages: {
    none: 'Before {front} no wheelchair can stand, neither head on ({width} by {length}) nor alongside; the widest place as deep as that is {widest}. Your local authority decides.',
    walls: 'Where a wheelchair can stand is not known: the walls cross each other or enclose nothing.',
  },
  judge({ scene }): RuleResult {
    if (!accessFigures(scene).isRequired || !targetsOf(scene).some((target) => target.kind !== 'door')) return doesNotApply;
    const places = measureStandingPlaces(scene);
    if (!places) {
      const missing = ['walls that close and do not cross'];
      const finding = { outcome: 'cannot-tell', severity: 'should', messageKey: 'walls', data: {}, subjects: ['room'], missing } as const;
      return { applies: true, findings: [finding] };
    }
    return { applies: true, findings: places.filter(({ has }) => !has).map(problem) };
  },
});

function problem({ target, widest }: StandingPlace): RuleFinding {
  const [line] = target.lines;
  const [width, length] = [mm(clearFloor.width), mm(clearFloor.length)];
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'none',
    data: { front: sayTarget(target), width, length, widest: mm(widest) },
    subjects: [target.id],
    ...(target.side && { part: target.side }),
    measured: mm(widest),
    needed: width,
    ...(line && { at: lerp(line.a, line.b, 0.5) }),
  };
}
