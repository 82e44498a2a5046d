import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayStrand, sayThings } from '../../findings/sayBoard.ts';
import { qualitiesOf } from '../../measures/order/qualities.ts';
import { hasBit, type OrderRelation } from '../../measures/order/relation.ts';
import { pointOfTray } from '../../measures/placeWords.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { defineRule } from '../rule.ts';

export const contrast = defineRule({
  id: 'order/contrast',
  asks: 'Does the stronger contrast come before the finer one?',
  why: 'What differs in several qualities at once is told apart at a glance; what differs in one alone needs a trained eye. A child grades the strong contrasts first.',
  tier: 'live',
  sources: ['M1912', 'H1914', 'common practice'],
  options: z.strictObject({
    /** how many qualities more a later thing may vary in */
    allowed: z.number().int().min(0).max(20).default(0),
  }),
  messages: {
    later:
      'Put {late} before {early}: it varies in {more} qualities, the other in {fewer}, and the stronger contrast comes first ({strand}).',
    notSaid: 'Whether the stronger contrast comes first is not known ({strand}).',
  },
  judge({ scene, measures, options: { allowed } }): RuleResult {
    const { relation } = measures.order();
    const sets = [...gradedSets(relation)].filter(([, places]) => places.length > 1);
    if (sets.length === 0) return doesNotApply;
    return {
      applies: true,
      findings: sets.flatMap(([strand, places]) => [
        ...laterFinding(scene, relation, strand, places, allowed),
        ...notSaid(relation, strand, places),
      ]),
    };
  },
});

const trayAt = ({ reading }: OrderRelation, place: number): SceneTray => reading[place] as SceneTray;

/** Places in reading order of the things that are graded, by strand. */
function gradedSets({ reading }: OrderRelation): Map<string, number[]> {
  const sets = new Map<string, number[]>();
  reading.forEach(({ material }, place) => {
    const strand = material.strand.trim();
    if (material.mode !== 'grade' || strand === '') return;
    sets.set(strand, [...(sets.get(strand) ?? []), place]);
  });
  return sets;
}

/** The pair with the largest difference. A pair that steps or prerequisites want this way round is none. */
function laterFinding(scene: Scene, relation: OrderRelation, strand: string, places: readonly number[], allowed: number): RuleFinding[] {
  let worst: { early: SceneTray; late: SceneTray; fewer: number; more: number } | null = null;
  for (const [i, p] of places.entries()) {
    const early = trayAt(relation, p);
    const fewer = qualitiesOf(early.material);
    if (fewer === null) continue;
    for (const q of places.slice(i + 1)) {
      const late = trayAt(relation, q);
      const more = qualitiesOf(late.material);
      if (more === null || more - fewer <= allowed || hasBit(relation.before, relation.words, q, p)) continue;
      if (worst === null || more - fewer > worst.more - worst.fewer) worst = { early, late, fewer, more };
    }
  }
  if (!worst) return [];
  const { early, late, fewer, more } = worst;
  const point = pointOfTray(scene, late);
  return [
    {
      outcome: 'problem',
      severity: 'note',
      messageKey: 'later',
      data: { strand: sayStrand(strand), early: early.material.name, late: late.material.name, fewer, more },
      subjects: [late.material.id, early.material.id],
      part: strand,
      ...(point && { at: point }),
    },
  ];
}

function notSaid(relation: OrderRelation, strand: string, places: readonly number[]): RuleFinding[] {
  const silent = places.map((place) => trayAt(relation, place).material).filter((material) => qualitiesOf(material) === null);
  if (silent.length === 0) return [];
  return [
    {
      outcome: 'cannot-tell',
      severity: 'note',
      messageKey: 'notSaid',
      data: { strand: sayStrand(strand) },
      subjects: silent.map(({ id }) => id),
      part: `${strand}/unknown`,
      missing: [`say which qualities vary in ${sayThings(silent.map(({ name }) => name))}`],
    },
  ];
}
