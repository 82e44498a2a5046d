import { z } from 'zod';
import { applyEdits } from '../../findings/applyEdits.ts';
import type { Edit, Fix } from '../../findings/edit.ts';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { sayBoard, sayStrand, sayThings } from '../../findings/sayBoard.ts';
import { whereFits } from '../../measures/fit.ts';
import { isExempt } from '../../measures/order/inversions.ts';
import { readingOrder } from '../../measures/order/reading.ts';
import { hasBit } from '../../measures/order/relation.ts';
import { type CutStrand, cutStrands, strandRuns } from '../../measures/order/strandRuns.ts';
import type { OrderMeasure } from '../../measures/order.ts';
import { pointOfTray } from '../../measures/placeWords.ts';
import { buildScene } from '../../scene/build.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { defineRule } from '../rule.ts';

/** After this many findings no more places are looked for. */
const MOST_FIXES = 4;
/** So many places are tried for a thing. */
const MOST_TRIED = 8;

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
    cut: 'Put {what} with the rest of {strand}: {by} stands between, so {apart} of the {all} stand apart.',
  },
  judge({ scene, measures, options: { practicalLife }, proposes }): RuleResult {
    const order = measures.order();
    const { before, words, columnOf } = order.relation;
    const columnOfTray = (tray: SceneTray): number => columnOf.get(tray.material.id) ?? 0;
    const isBefore = (early: SceneTray, late: SceneTray): boolean => hasBit(before, words, columnOfTray(late), columnOfTray(early));
    const isJudged = (tray: SceneTray): boolean =>
      !isExempt(tray, order.carryNoteKg) && (practicalLife || tray.material.area !== 'practical-life');
    const cutsOf = (reading: readonly SceneTray[]): CutStrand[] => cutStrands(strandRuns(reading.filter(isJudged)), isBefore);
    const runs = strandRuns(order.relation.reading.filter(isJudged));
    if (new Set(runs.map((run) => run.strand)).size < 2) return doesNotApply;
    const cuts = cutStrands(runs, isBefore);
    const findings = cuts.map((cut, index) =>
      finding(scene, cut, proposes && index < MOST_FIXES ? joinUp(scene, order, cut, cuts, cutsOf) : null),
    );
    return { applies: true, findings };
  },
});

function finding(scene: Scene, { strand: name, main, apart, by }: CutStrand, fix: Fix | null): RuleFinding {
  const [first] = apart;
  const point = first && pointOfTray(scene, first);
  return {
    outcome: 'problem',
    severity: 'note',
    messageKey: 'cut',
    data: {
      strand: sayStrand(name),
      by: sayThings(by.map(sayStrand)),
      apart: apart.length,
      all: apart.length + main.trays.length,
      what: sayThings(apart.map(({ material }) => material.name)),
    },
    subjects: apart.map(({ material }) => material.id),
    part: name,
    measured: { value: apart.length, unit: 'materials' },
    needed: { value: 0, unit: 'materials' },
    ...(point && { at: point }),
    ...(fix && { fix }),
  };
}

/** A single thing that stands apart goes to where its strand is: in step, in reach and so that no strand is cut anew. */
function joinUp(
  scene: Scene,
  order: OrderMeasure,
  cut: CutStrand,
  cuts: readonly CutStrand[],
  cutsOf: (reading: readonly SceneTray[]) => CutStrand[],
): Fix | null {
  const [only] = cut.apart;
  if (!only || cut.apart.length > 1) return null;
  const cutBefore = new Set(cuts.map((one) => one.strand));
  const tried = whereFits(scene, order, only.material.id)
    .filter((place) => place.fits !== 'no' && place.isInReach && place.isInStep && place.cuts === null && place.isBesideItsStrand)
    .slice(0, MOST_TRIED);
  for (const { side, board, placements } of tried) {
    const edits: Edit[] = placements.map((placement) => ({ do: 'place', placement }));
    const then = buildScene(applyEdits(scene.classroom, scene.arrangement.id, edits), scene.arrangement.id);
    const left = cutsOf(readingOrder(then)).map((one) => one.strand);
    if (left.includes(cut.strand) || left.some((name) => !cutBefore.has(name))) continue;
    return { label: `Do it: ${only.material.name} to ${sayBoard(side, board)}`, edits };
  }
  return null;
}
