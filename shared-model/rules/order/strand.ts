import { z } from 'zod';
import type { Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { whereFits } from '../../measures/fit.ts';
import { isExempt } from '../../measures/order/inversions.ts';
import { hasBit } from '../../measures/order/relation.ts';
import { type CutStrand, cutStrands, strandRuns } from '../../measures/order/strandRuns.ts';
import type { OrderMeasure } from '../../measures/order.ts';
import { pointOfTray } from '../../measures/placeWords.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { defineRule } from '../rule.ts';

/** After this many findings no more places are looked for. */
const MOST_FIXES = 12;

export const strand = defineRule({
  id: 'order/strand',
  asks: 'Do the things of one strand stand together?',
  why: 'A child goes on to the next thing of the same kind only if it stands next. With another strand in between the thread is lost.',
  tier: 'settle',
  sources: ['common practice'],
  options: z.strictObject({
    /** whether strands of practical life are judged */
    practicalLife: z.boolean().default(false),
  }),
  messages: {
    cut: '{strand} is cut by {by}: {apart} of its {all} stand apart from the others ({what}).',
  },
  judge({ scene, measures, options: { practicalLife } }): RuleResult {
    const order = measures.order();
    const reading = order.relation.reading.filter(
      (tray) => !isExempt(tray, order.carryNoteKg) && (practicalLife || tray.material.area !== 'practical-life'),
    );
    const runs = strandRuns(reading);
    if (new Set(runs.map((run) => run.strand)).size < 2) return doesNotApply;
    const { before, words, columnOf } = order.relation;
    const columnOfTray = (tray: SceneTray): number => columnOf.get(tray.material.id) ?? 0;
    const isBefore = (early: SceneTray, late: SceneTray): boolean => hasBit(before, words, columnOfTray(late), columnOfTray(early));
    return { applies: true, findings: cutStrands(runs, isBefore).map((cut, index) => finding(scene, order, cut, index < MOST_FIXES)) };
  },
});

function finding(scene: Scene, order: OrderMeasure, cut: CutStrand, withFix: boolean): RuleFinding {
  const { main, apart, by } = cut;
  const [only] = apart;
  const fix = withFix && apart.length === 1 && only ? joinUp(scene, order, cut.strand, only.material.id) : null;
  const point = only && pointOfTray(scene, only);
  return {
    outcome: 'problem',
    severity: 'note',
    messageKey: 'cut',
    data: {
      strand: cut.strand,
      by: sayThings(by),
      apart: apart.length,
      all: apart.length + main.trays.length,
      what: sayThings(apart.map(({ material }) => material.name)),
    },
    subjects: apart.map(({ material }) => material.id),
    part: cut.strand,
    measured: { value: apart.length, unit: 'materials' },
    needed: { value: 0, unit: 'materials' },
    ...(point && { at: point }),
    ...(fix && { fix }),
  };
}

/** A single thing that stands apart goes to where its strand is: in step, in reach and without cutting another. */
function joinUp(scene: Scene, order: OrderMeasure, strandName: string, material: string): Fix | null {
  const best = whereFits(scene, order, material).find(
    (place) =>
      place.fits !== 'no' &&
      place.isInReach &&
      place.isInStep &&
      place.cuts === null &&
      (place.behind?.strand.trim() === strandName || place.ahead?.strand.trim() === strandName),
  );
  if (!best) return null;
  const name = scene.materialById.get(material)?.name ?? material;
  return {
    label: `Do it: ${name} to ${sayBoard(best.side, best.board)}`,
    edits: best.placements.map((placement) => ({ do: 'place', placement })),
  };
}
