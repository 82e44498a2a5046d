import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardPart, sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { sayWhichChild } from '../../findings/sayChild.ts';
import { mendBoard } from '../../findings/trayMends.ts';
import { boardsForChildren, type HeldBoard, type Reach } from '../../measures/reach.ts';
import { judgeSee, judgeTake } from '../../measures/trayReach.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { meets } from '../../units/compare.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

export const twoHands = defineRule({
  id: 'reach/two-hands',
  asks: 'Does what takes two hands stand no higher than the shoulder?',
  why: 'With both hands above the shoulder a child neither sees what it lifts nor holds its balance; the tray tips towards the face.',
  tier: 'live',
  sources: ['CDC2000', 'UM-HSRI-77-17', 'class rule'],
  options: z.strictObject({
    /** mm that the board may lie above the shoulder */
    above: z.number().min(0).max(1000).default(0),
  }),
  messages: {
    high: '{what} on {board}, at {height}: carried with two hands, and the shoulder of {child} is at {shoulder}.',
    notKnown: 'Of {count} things on high boards it is not known whether they take one hand or two ({what}).',
    noHeight: '{what} on {board}: how high the board is, is not known.',
    noChild: 'How high the shoulder of the youngest child is, is not known.',
  },
  judge({ scene, measures, options: { above } }): RuleResult {
    const boards = boardsForChildren(scene);
    if (boards.length === 0) return doesNotApply;
    const reach = measures.reach();
    if (!reach.smallest) {
      const whole = { outcome: 'cannot-tell', severity: 'note', messageKey: 'noChild', data: {}, subjects: ['classroom'] } as const;
      return { applies: true, findings: [{ ...whole, missing: reach.missing }] };
    }
    const isHigh = (surface: number | null, tray: SceneTray): boolean => {
      const child = reach.meantFor(tray.material);
      return surface !== null && child !== null && !meets(child.shoulder + above, surface);
    };
    const open = boards.flatMap(({ board }) => board.trays.filter((tray) => tray.material.hands === null && isHigh(board.surface, tray)));
    return {
      applies: true,
      findings: [...boards.flatMap((held) => [...highOn(scene, reach, held, isHigh), ...noHeight(held)]), ...notKnown(open)],
    };
  },
});

/** One for each board; the youngest child decides. "Do it" keeps everything in reach and in sight. */
function highOn(
  scene: Scene,
  reach: Reach,
  { side, board }: HeldBoard,
  isHigh: (surface: number | null, tray: SceneTray) => boolean,
): RuleFinding[] {
  const takesTwo = (tray: SceneTray): boolean => tray.material.hands === 2;
  const wrong = board.trays.filter((tray) => takesTwo(tray) && isHigh(board.surface, tray));
  const children = wrong.flatMap((tray) => reach.meantFor(tray.material) ?? []).sort((p, q) => p.shoulder - q.shoulder);
  const [child] = children;
  const { smallest } = reach;
  if (!child || !smallest || board.surface === null) return [];
  const fix = mendBoard(scene, side, board, wrong, (tray, spot) => {
    const meant = reach.meantFor(tray.material);
    const at = reach.spotOf(spot.side, spot.board, tray, spot);
    if (meant === null || (takesTwo(tray) && isHigh(spot.surface, tray))) return false;
    return judgeTake(smallest, at, tray).verdict === 'fine' && judgeSee(meant, at, tray).verdict !== 'beyond';
  });
  return [
    {
      outcome: 'problem',
      severity: 'note',
      messageKey: 'high',
      data: {
        what: sayThings(wrong.map(({ material }) => material.name)),
        board: sayBoard(side, board),
        height: mm(board.surface),
        child: sayWhichChild(child.isMeasured ? 'the smallest child' : 'the smallest child meant to use it', child),
        shoulder: mm(child.shoulder),
      },
      subjects: [side.piece.id],
      trays: wrong.map(({ material }) => material.id),
      part: boardPart(board),
      measured: mm(board.surface),
      needed: mm(child.shoulder),
      at: side.body.center,
      ...(fix && { fix }),
    },
  ];
}

function noHeight({ side, board }: HeldBoard): RuleFinding[] {
  const trays = board.trays.filter((tray) => tray.material.hands !== 1);
  if (board.surface !== null || trays.length === 0) return [];
  return [
    {
      outcome: 'cannot-tell',
      severity: 'note',
      messageKey: 'noHeight',
      data: { what: sayThings(trays.map(({ material }) => material.name)), board: sayBoard(side, board) },
      subjects: [side.piece.id],
      part: `${boardPart(board)}/unknown`,
      at: side.body.center,
      missing: [`give ${side.body.label} its height`],
    },
  ];
}

/** One for the room: most lists say nothing of hands. */
function notKnown(open: readonly SceneTray[]): RuleFinding[] {
  if (open.length === 0) return [];
  const what = sayThings(open.map(({ material }) => material.name));
  return [
    {
      outcome: 'cannot-tell',
      severity: 'note',
      messageKey: 'notKnown',
      data: { count: open.length, what },
      subjects: ['classroom'],
      missing: [`say whether ${what} take one hand or two`],
    },
  ];
}
