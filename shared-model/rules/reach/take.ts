import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardPart, sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { sayWhichChild } from '../../findings/sayChild.ts';
import { type MendedSpot, mendBoard } from '../../findings/trayMends.ts';
import type { ChildModel } from '../../measures/childModel.ts';
import { boardsForChildren, type HeldBoard, missingOf } from '../../measures/reach.ts';
import { judgeSee, judgeTake, type TakeVerdict } from '../../measures/trayReach.ts';
import type { Measures } from '../../measures/values.ts';
import type { Scene, SceneTray } from '../../scene/types.ts';
import { mm } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** mm of reach to have left over */
  spare: z.number().min(0).max(1000).default(0),
});

interface Judged {
  readonly tray: SceneTray;
  readonly take: TakeVerdict;
}

export const take = defineRule({
  id: 'reach/take',
  asks: 'Can the smallest child take everything from its shelf?',
  why: 'What a child cannot reach alone has to be asked for, or is climbed for.',
  tier: 'live',
  sources: ['CDC2000', 'UM-HSRI-77-17', 'class rule'],
  options,
  messages: {
    tooHigh:
      '{what} on {board}: the grip is at {height}; {child}, {stature} tall, reaches {limit} where the hand goes {depth} behind the front.',
    tooDeep: '{what} on {board}: the hand has to go {depth} behind the front; the arm of {child}, {stature} tall, ends at {deepest}.',
    notMeasured: '{what} on {board}: whether the smallest child can take it is not known.',
    noChild: 'How far the smallest child reaches is not known.',
  },
  judge({ scene, measures, options: { spare } }): RuleResult {
    const boards = boardsForChildren(scene);
    if (boards.length === 0) return doesNotApply;
    const reach = measures.reach();
    const child = reach.smallest;
    if (!child) {
      const whole = { outcome: 'cannot-tell', severity: 'must', messageKey: 'noChild', data: {}, subjects: ['classroom'] } as const;
      return { applies: true, findings: [{ ...whole, missing: reach.missing }] };
    }
    const findings = boards.flatMap((held) => {
      const judged = held.board.trays.map(
        (tray): Judged => ({ tray, take: judgeTake(child, reach.spotOf(held.side, held.board, tray), tray, spare) }),
      );
      return [...beyond(scene, measures, child, held, judged, spare), ...unknown(held, judged)];
    });
    return { applies: true, findings };
  },
});

/** mm by which a grip is out of reach; what the arm does not get to at any height comes first. */
const excess = ({ take }: Judged): number =>
  take.limit === null || take.depth >= take.deepest ? 1e6 + take.depth - take.deepest : (take.height ?? 0) - take.limit;

function beyond(
  scene: Scene,
  measures: Measures,
  child: ChildModel,
  { side, board }: HeldBoard,
  judged: readonly Judged[],
  spare: number,
): RuleFinding[] {
  const wrong = judged.filter(({ take }) => take.verdict === 'beyond').sort((p, q) => excess(q) - excess(p));
  const worst = wrong[0]?.take;
  if (!worst) return [];
  const { height, depth, limit, deepest } = worst;
  const isTooDeep = limit === null || height === null || depth >= deepest;
  const fix = mendBoard(
    scene,
    side,
    board,
    wrong.map(({ tray }) => tray),
    (tray, spot) => isFineOn(measures, child, spare, tray, spot),
  );
  return [
    {
      outcome: 'problem',
      severity: 'must',
      messageKey: isTooDeep ? 'tooDeep' : 'tooHigh',
      data: {
        what: sayThings(wrong.map(({ tray }) => tray.material.name)),
        board: sayBoard(side, board),
        child: sayWhichChild('the smallest child', child),
        stature: mm(child.stature),
        depth: mm(depth),
        deepest: mm(deepest),
        ...(!isTooDeep && { height: mm(height), limit: mm(limit) }),
      },
      subjects: [side.piece.id],
      trays: wrong.map(({ tray }) => tray.material.id),
      part: boardPart(board),
      measured: mm(isTooDeep ? depth : height),
      needed: mm(isTooDeep ? deepest : limit),
      at: side.body.center,
      ...(fix && { fix }),
    },
  ];
}

/** Fine to take, and no harder to look into than "not known". */
function isFineOn({ reach }: Measures, child: ChildModel, spare: number, tray: SceneTray, mended: MendedSpot): boolean {
  const spot = reach().spotOf(mended.side, mended.board, tray, mended);
  if (judgeTake(child, spot, tray, spare).verdict !== 'fine') return false;
  const meant = reach().meantFor(tray.material);
  return meant !== null && judgeSee(meant, spot, tray).verdict !== 'beyond';
}

function unknown({ side, board }: HeldBoard, judged: readonly Judged[]): RuleFinding[] {
  const open = judged.filter(({ take }) => take.verdict === 'unknown').map(({ tray }) => tray);
  if (open.length === 0) return [];
  return [
    {
      outcome: 'cannot-tell',
      severity: 'must',
      messageKey: 'notMeasured',
      data: { what: sayThings(open.map(({ material }) => material.name)), board: sayBoard(side, board) },
      subjects: [side.piece.id],
      part: `${boardPart(board)}/unknown`,
      at: side.body.center,
      missing: missingOf(side, board, open, true),
    },
  ];
}
