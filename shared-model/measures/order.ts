import type { Scene } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { roundMm } from '../units/round.ts';
import { judgesPracticalLife, trayGapOf } from './order/classOptions.ts';
import { insertAll, type Mending, type MustHold } from './order/insertion.ts';
import { type CarryNoteKg, type Inversions, inversionsOf, type StrandTrouble, troublesOf } from './order/inversions.ts';
import { type OrderRelation, orderRelation } from './order/relation.ts';

/** The order of what stands on the children's shelves. */
export interface OrderMeasure {
  /** Who has to come before whom, and the reading order. */
  readonly relation: OrderRelation;
  readonly inversions: Inversions;
  /** Strands in which something stands before what comes first. */
  readonly troubles: readonly StrandTrouble[];
  /** Circles that the class's own prerequisites make, as material ids, if something of them stands on a shelf. */
  readonly circles: readonly (readonly string[])[];
  /** Places for the trays of one strand's trouble that take it away; the rest stays. */
  mend(trouble: StrandTrouble): Mending;
  /** Every strand with a placed material, in reading order, as the report gives it. */
  strands(): readonly StrandOrder[];
}

/** One line of `measures.order` in the report. Lengths in mm, to 0.01. */
export interface StrandOrder {
  readonly strand: string;
  readonly placed: number;
  /** The most that can stay where they are. */
  readonly inOrder: number;
  readonly moves: readonly OrderMove[];
}
export interface OrderMove {
  readonly material: string;
  readonly to: { readonly piece: string; readonly side: Side; readonly level: string | null; readonly x: number };
}

/**
 * The fewest materials that have to move so that nothing stands before what comes first: all but the largest set in order,
 * which is the maximum antichain of the inversions, exact.
 * @param carryNoteKg kg that the youngest child meant for a material carries without a note
 */
export function orderOf(scene: Scene, carryNoteKg: CarryNoteKg): OrderMeasure {
  const relation = orderRelation(scene);
  const inversions = inversionsOf(relation, { carryNoteKg, practicalLife: judgesPracticalLife(scene.classroom) });
  const troubles = troublesOf(relation, inversions);
  const gap = trayGapOf(scene.classroom);
  const isPlaced = (id: string) => (relation.columnOf.get(id) ?? Infinity) < relation.reading.length;
  const isJudged = (first: number, second: number): boolean => inversions.isAsked(first, second);
  return {
    relation,
    inversions,
    troubles,
    circles: relation.graph.circles.filter((ids) => ids.some(isPlaced)),
    mend({ strand, moves }) {
      const mustHold: MustHold = (first, second) => relation.reading[second]?.material.strand.trim() === strand && isJudged(first, second);
      return insertAll(scene, relation, moves, mustHold, gap);
    },
    strands: () => strandsOf(scene, relation, inversions, isJudged, gap),
  };
}

function strandsOf(scene: Scene, relation: OrderRelation, inversions: Inversions, mustHold: MustHold, gap: number): StrandOrder[] {
  const placed = new Map<string, string[]>();
  const moving: number[] = [];
  relation.reading.forEach(({ material }, position) => {
    const strand = material.strand.trim();
    const list = placed.get(strand);
    if (list) list.push(material.id);
    else placed.set(strand, [material.id]);
    if (inversions.moves[position] === 1) moving.push(position);
  });
  const places = moving.length === 0 ? [] : insertAll(scene, relation, moving, mustHold, gap).places;
  const moves = new Map(
    places.map(({ material, board, x }): [string, OrderMove] => {
      const { piece, side, level } = board.board;
      return [material, { material, to: { piece: piece.id, side, level: level?.id ?? null, x: roundMm(x) } }];
    }),
  );
  return [...placed].map(([strand, ids]) => {
    const mine = ids.flatMap((id) => moves.get(id) ?? []);
    return { strand, placed: ids.length, inOrder: ids.length - mine.length, moves: mine };
  });
}
