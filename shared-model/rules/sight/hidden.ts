import { z } from 'zod';
import type { RuleFinding, RuleResult } from '../../findings/finding.ts';
import type { HiddenPatch } from '../../measures/sight.ts';
import type { SceneBody } from '../../scene/types.ts';
import { m2 } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const MM2 = 1e6;

export const hidden = defineRule({
  id: 'sight/hidden',
  asks: 'Can an adult see every child?',
  why: 'A child is left to work alone because an adult sees when help is needed. Where nobody sees, small troubles grow. A clear view does not take the place of an adult who walks round; your licensing authority decides how children are watched.',
  tier: 'settle',
  sources: ['class rule'],
  options: z.strictObject({
    /** m²; a smaller patch, half a metre square, is no place for a child to work */
    least: z.number().min(0).max(100).default(0.25),
  }),
  messages: {
    hidden: '{area} of floor {place} cannot be seen from any place where adults watch.',
    heights: 'Whether a further {area} of floor can be seen is not known: it may lie behind {things}.',
    watch: 'What adults see is not known: no watching place lies in the room.',
    walls: 'What adults see is not known: the walls cross each other or enclose nothing.',
  },
  judge({ measures, options }): RuleResult {
    const sight = measures.sight();
    if (!sight) return unknown('walls', 'walls that close and do not cross');
    if (sight.eyes.length === 0) return unknown('watch', 'where adults watch from: a watching place, or the chair of an adult');
    const found = byCause(sight.hidden.filter(({ area }) => area / MM2 >= options.least)).map(problem);
    const doubtful = sight.doubtful.filter(({ area }) => area / MM2 >= options.least);
    if (doubtful.length === 0 || sight.unknown.length === 0) return { applies: true, findings: found };
    const area = m2(doubtful.reduce((sum, patch) => sum + patch.area, 0) / MM2);
    const at = doubtful[0]?.outline[0];
    const heights: RuleFinding = {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'heights',
      data: { area, things: sight.unknown.map(({ label }) => label).join(', ') },
      subjects: sight.unknown.map(({ id }) => id),
      part: 'height',
      ...(at && { at }),
      missing: sight.unknown.map(({ label }) => `the height of ${label}`),
    };
    return { applies: true, findings: [...found, heights] };
  },
});

function unknown(messageKey: 'walls' | 'watch', missing: string): RuleResult {
  return {
    applies: true,
    findings: [{ outcome: 'cannot-tell', severity: 'should', messageKey, data: {}, subjects: ['room'], missing: [missing] }],
  };
}

interface Cause {
  readonly behind: SceneBody | null;
  readonly patches: HiddenPatch[];
}

/** Patches by what hides them: mending that mends them all. */
function byCause(patches: readonly HiddenPatch[]): Cause[] {
  const causes = new Map<SceneBody | null, Cause>();
  for (const patch of patches) {
    const cause = causes.get(patch.behind) ?? { behind: patch.behind, patches: [] };
    causes.set(patch.behind, cause);
    cause.patches.push(patch);
  }
  return [...causes.values()];
}

function problem({ behind, patches }: Cause): RuleFinding {
  const area = m2(patches.reduce((sum, patch) => sum + patch.area, 0) / MM2);
  const at = patches[0]?.at;
  return {
    outcome: 'problem',
    severity: 'should',
    messageKey: 'hidden',
    data: { area, place: behind ? `behind ${behind.label}` : 'behind a corner of the walls' },
    subjects: [behind?.id ?? 'room'],
    measured: area,
    needed: m2(0),
    ...(at && { at }),
  };
}
