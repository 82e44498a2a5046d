import { z } from 'zod';
import { doesNotApply, type RuleFinding, type RuleResult } from '../../findings/finding.ts';
import { boardPart, sayBoard, sayThings } from '../../findings/sayBoard.ts';
import { sayChild } from '../../findings/sayChild.ts';
import { carriedAtOnce } from '../../measures/carrying.ts';
import { massOf } from '../../measures/childMass.ts';
import type { ChildModel } from '../../measures/childModel.ts';
import { CARRY_NOTE } from '../../measures/order/carryNote.ts';
import { boardsForChildren, type HeldBoard, type Reach } from '../../measures/reach.ts';
import type { Material } from '../../schema/types.ts';
import { kg } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';

const options = z.strictObject({
  /** share of body mass above which it is worth a note */
  note: z.number().min(0).max(1).default(CARRY_NOTE),
  /** share of body mass above which it should be lighter */
  should: z.number().min(0).max(1).default(0.15),
});
type Options = z.output<typeof options>;

/** kg: rounding of the shares */
const EXACT = 1e-9;

export const carry = defineRule({
  id: 'reach/carry',
  asks: 'Is everything light enough for a child to carry?',
  why: 'A child carries its work to a mat or a table and back, again and again. What is too heavy is dragged, dropped or left.',
  tier: 'live',
  sources: ['D-carry', 'CDC2000', 'class rule'],
  options,
  messages: {
    heavy:
      '{what} on {board}: {heaviest} carried at once is {share} of the {body} of the smallest child meant to use it ({child}).{estimate} A proxy from backpack advice, no limit for carrying in the hands was found.',
    notKnown: 'Of {count} things it is not known how much of them a child carries at once ({what}).',
    noChild: 'How much the youngest child weighs is not known.',
  },
  judge({ scene, measures, options: limits }): RuleResult {
    const boards = boardsForChildren(scene);
    if (boards.length === 0) return doesNotApply;
    const reach = measures.reach();
    if (!reach.smallest) {
      const whole = { outcome: 'cannot-tell', severity: 'should', messageKey: 'noChild', data: {}, subjects: ['classroom'] } as const;
      return { applies: true, findings: [{ ...whole, missing: reach.missing }] };
    }
    const loads = boards.flatMap((held) => held.board.trays.flatMap(({ material }) => loadOf(reach, held, material, limits)));
    return { applies: true, findings: [...boards.flatMap((held) => heavyOn(held, loads, limits)), ...notKnown(loads)] };
  },
});

interface Load {
  readonly material: Material;
  readonly held: HeldBoard;
  /** kg carried at once; null: not known, and it may be too much */
  readonly carried: number | null;
  /** kg */
  readonly body: number;
  readonly child: ChildModel;
}

/** What is carried where it may be too much; what is not known but light in any case is none. */
function loadOf(reach: Reach, held: HeldBoard, material: Material, { note, should }: Options): Load[] {
  const child = reach.meantFor(material);
  if (!child) return [];
  // A class may set the note aside by putting it above the other limit.
  const body = massOf(child);
  const limit = Math.min(note, should) * body + EXACT;
  const carried = carriedAtOnce(material);
  if (carried && carried.high <= limit) return [];
  const isKnown = carried !== null && carried.low === carried.high;
  return [{ material, held, carried: isKnown ? carried.high : null, body, child }];
}

/** One for each board, by the heaviest for its child. */
function heavyOn(held: HeldBoard, loads: readonly Load[], { note, should }: Options): RuleFinding[] {
  const share = ({ carried, body }: Load): number => (carried ?? 0) / body;
  const heavy = loads.filter((load) => load.held === held && load.carried !== null).sort((p, q) => share(q) - share(p));
  const [worst] = heavy;
  if (!worst || worst.carried === null) return [];
  const { side, board } = held;
  const isOverShould = worst.carried > should * worst.body + EXACT;
  const isEstimate = heavy.some(
    ({ material }) => material.sure.heaviest === 'estimate' || (material.heaviest === null && material.sure.mass === 'estimate'),
  );
  return [
    {
      outcome: 'problem',
      severity: isOverShould ? 'should' : 'note',
      messageKey: 'heavy',
      data: {
        what: sayThings(heavy.map(({ material }) => material.name)),
        board: sayBoard(side, board),
        heaviest: kg(worst.carried),
        share: { value: share(worst), unit: 'share' },
        body: kg(worst.body),
        child: sayChild(worst.child),
        estimate: isEstimate ? ' The mass is an estimate: weigh it.' : '',
      },
      subjects: [side.piece.id],
      trays: heavy.map(({ material }) => material.id),
      part: boardPart(board),
      measured: kg(worst.carried),
      needed: kg((isOverShould ? should : note) * worst.body),
      at: side.body.center,
    },
  ];
}

/** One for the room: most lists say nothing of carrying. */
function notKnown(loads: readonly Load[]): RuleFinding[] {
  const open = loads.filter((load) => load.carried === null);
  if (open.length === 0) return [];
  const what = sayThings(open.map(({ material }) => material.name));
  return [
    {
      outcome: 'cannot-tell',
      severity: 'should',
      messageKey: 'notKnown',
      data: { count: open.length, what },
      subjects: ['classroom'],
      missing: [`say of ${what} whether they are carried whole or in pieces, and weigh what is carried at once`],
    },
  ];
}
