import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardPart, sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { sayWhichChild } from '../../findings/sayChild.ts';
import { mendBoard } from '../../findings/trayMends.ts';
import type { ChildModel } from '../../measures/childModel.ts';
import { boardsForChildren, type HeldBoard, missingOf } from '../../measures/reach.ts';
import { type LookRules, seeLine, standOffAt, usualLook } from '../../measures/reachCurves.ts';
import { judgeSee, judgeTake, type SeeVerdict } from '../../measures/trayReach.ts';
import type { Measures } from '../../measures/values.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** degrees; a flatter sight line hides flat things */
  angle: z.number().gt(0).lt(90).default(usualLook.angle),
  /** mm; how far she steps back to look */
  stepBack: z.number().min(0).max(100_000).default(usualLook.stepBack),
});

interface Judged {
  readonly tray: SceneTray;
  readonly child: ChildModel;
  readonly see: SeeVerdict;
}

export const see = defineRule({
  id: 'reach/see',
  asks: 'Can the smallest child see what stands on the shelf?',
  why: 'A child chooses with the eyes: what she cannot see into is not there for her.',
  tier: 'live',
  sources: ['CDC2000', 'UM-HSRI-77-17', 'class rule'],
  options,
  messages: {
    tooHigh:
      '{what} on {board}: the board is at {surface}; with the eye at {eye}, {child} sees into boards up to {limit} where the thing stands {depth} behind the front.',
    hidden:
      '{what} on {board}: the board above hides it from {child}, eye at {eye}, as far back as the floor before it lets her step ({floor}).',
    noFloor: '{what} on {board}: there is only {floor} of free floor before it, and {child} stands {standOff} from the shelf to look.',
    notMeasured: '{what} on {board}: whether the smallest child sees it is not known.',
    noChild: 'Where the eyes of the smallest child are is not known.',
  },
  judge({ scene, measures, options: rules }): RuleResult {
    const boards = boardsForChildren(scene);
    if (boards.length === 0) return doesNotApply;
    const reach = measures.reach();
    if (!reach.smallest) {
      const whole = { outcome: 'cannot-tell', severity: 'should', messageKey: 'noChild', data: {}, subjects: ['classroom'] } as const;
      return { applies: true, findings: [{ ...whole, missing: reach.missing }] };
    }
    const findings = boards.flatMap((held) => {
      const judged = held.board.trays.flatMap((tray): Judged[] => {
        const child = reach.meantFor(tray.material);
        return child ? [{ tray, child, see: judgeSee(child, reach.spotOf(held.side, held.board, tray), tray, rules) }] : [];
      });
      return [...unseen(scene, measures, held, judged, rules), ...unknown(scene, held, judged)];
    });
    return { applies: true, findings };
  },
});

/** Highest open surface (mm) that is seen into at a tray's depth, from as near as she stands. */
function highestSeen({ child, see }: Judged, { side }: HeldBoard, { angle }: LookRules): number {
  return seeLine(child, see.depth, standOffAt(child, side.piece.toeRecess), angle);
}

function unseen(scene: Scene, measures: Measures, held: HeldBoard, judged: readonly Judged[], rules: LookRules): RuleFinding[] {
  const { side, board } = held;
  const wrong = judged
    .filter((one) => one.see.verdict === 'beyond')
    .sort((p, q) => highestSeen(p, held, rules) - highestSeen(q, held, rules));
  const worst = wrong[0];
  if (!worst || board.surface === null) return [];
  const { child, see: seen } = worst;
  const limit = highestSeen(worst, held, rules);
  const standOff = standOffAt(child, side.piece.toeRecess);
  const isTooHigh = board.surface > limit;
  const reason = isTooHigh ? 'tooHigh' : seen.floor < standOff ? 'noFloor' : 'hidden';
  const trays = wrong.map(({ tray }) => tray);
  const fix = mendBoard(scene, side, board, trays, (tray, mended) => {
    const spot = measures.reach().spotOf(mended.side, mended.board, tray, mended);
    const [meant, smallest] = [measures.reach().meantFor(tray.material), measures.reach().smallest];
    if (!meant || !smallest) return false;
    return judgeSee(meant, spot, tray, rules).verdict === 'fine' && judgeTake(smallest, spot, tray).verdict !== 'beyond';
  });
  const who = child.months === measures.reach().smallest?.months ? 'the smallest child' : 'the youngest child meant to use it';
  return [
    {
      outcome: 'problem',
      severity: 'should',
      messageKey: reason,
      data: {
        what: sayThings(trays.map(({ material }) => material.name)),
        board: sayBoard(side, board),
        child: sayWhichChild(who, child),
        surface: mm(board.surface),
        eye: mm(child.eye),
        limit: mm(limit),
        depth: mm(seen.depth),
        floor: mm(seen.floor),
        standOff: mm(standOff),
      },
      subjects: [side.piece.id],
      trays: trays.map(({ material }) => material.id),
      part: boardPart(board),
      // Measured and needed only where one height decides; a board above leaves no single figure.
      ...(isTooHigh && { measured: mm(board.surface), needed: mm(limit) }),
      at: side.body.center,
      ...(fix && { fix }),
    },
  ];
}

function unknown({ room }: Scene, { side, board }: HeldBoard, judged: readonly Judged[]): RuleFinding[] {
  const open = judged.filter(({ see: seen }) => seen.verdict === 'unknown').map(({ tray }) => tray);
  if (open.length === 0) return [];
  const sizes = missingOf(side, board, open, false);
  return [
    {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'notMeasured',
      data: { what: sayThings(open.map(({ material }) => material.name)), board: sayBoard(side, board) },
      subjects: [side.piece.id],
      part: `${boardPart(board)}/unknown`,
      at: side.body.center,
      missing: sizes.length > 0 || room.isSound ? sizes : ['mend the walls: they cross, so the floor before the shelf is not known'],
    },
  ];
}
