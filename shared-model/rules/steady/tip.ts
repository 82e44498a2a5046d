import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayThings } from '../../findings/sayBoard.ts';
import { isBacked } from '../../measures/backing.ts';
import type { SceneBody } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const classRule = 'A class rule: no published threshold for open shelves was found. Your local authority decides.';

export const tip = defineRule({
  id: 'steady/tip',
  asks: 'Does every shelf stand so that it cannot tip over?',
  why: 'Children pull themselves up, lean and climb. A tall, shallow shelf that nothing holds comes down on them.',
  tier: 'live',
  sources: ['class rule', 'D02'],
  options: z.strictObject({
    /** height over depth from which a shelf has to be held */
    ratio: z.number().positive().max(100).default(2),
    /** mm to a wall or to a shelf behind it that holds it */
    near: z.number().min(0).max(1000).default(50),
  }),
  messages: {
    loose: `{what}: not fixed, taller than {ratio} times the depth, and neither wall nor shelf stands behind. {worst} is {height} high and {depth} deep. Fix {them} to wall or floor. ${classRule}`,
    unknown: `{what}: free in the room, and whether {they} could tip over is not known. ${classRule}`,
  },
  judge({ scene, options: { ratio, near } }): RuleResult {
    const shelves = scene.bodies.filter((body) => body.kind === 'shelf' && body.piece);
    if (shelves.length === 0) return doesNotApply;
    const isSlim = ({ height, depth }: SceneBody): boolean => height === null || !meets(ratio * depth, height);
    const free = shelves.filter((body) => body.piece?.anchored !== true && isSlim(body) && !isBacked(scene, body, near));
    const loose = free.filter((body) => body.piece?.anchored === false && body.height !== null);
    const open = free.filter((body) => !loose.includes(body));
    return { applies: true, findings: [...looseFinding(loose, ratio), ...openFinding(open)] };
  },
});

const slimness = ({ height, depth }: SceneBody): number => (height ?? 0) / depth;

function looseFinding(loose: readonly SceneBody[], ratio: number): RuleFinding[] {
  const worst = [...loose].sort((p, q) => slimness(q) - slimness(p))[0];
  if (worst?.height == null) return [];
  return [
    {
      outcome: 'problem',
      severity: 'should',
      messageKey: 'loose',
      data: {
        what: sayThings(loose.map(({ label }) => label)),
        ratio,
        worst: worst.label,
        height: mm(worst.height),
        depth: mm(worst.depth),
        them: loose.length === 1 ? 'it' : 'them',
      },
      subjects: loose.map(({ id }) => id),
      measured: mm(worst.height),
      needed: mm(ratio * worst.depth),
      at: worst.center,
    },
  ];
}

function openFinding(open: readonly SceneBody[]): RuleFinding[] {
  if (open.length === 0) return [];
  const [first] = open;
  return [
    {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'unknown',
      data: { what: sayThings(open.map(({ label }) => label)), they: open.length === 1 ? 'it' : 'they' },
      subjects: open.map(({ id }) => id),
      part: 'unknown',
      ...(first && { at: first.center }),
      missing: open.flatMap(({ label, height, piece }) => [
        ...(piece?.anchored === null ? [`say whether ${label} is fixed to wall or floor`] : []),
        ...(height === null ? [`give ${label} its height`] : []),
      ]),
    },
  ];
}
