import type { Scene, ShelvesScene } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { roundMm } from '../units/round.ts';
import { bestMending } from './order/bestMending.ts';
import { judgesPracticalLife, trayGapOf } from './order/classOptions.ts';
import { type InsertBy, type IsInReach, insertAll, type Mending } from './order/insertion.ts';
import { type CarryNoteKg, type Inversions, inversionsOf, type StrandTrouble, troublesOf } from './order/inversions.ts';
import { isSameContent, type OrderContent, orderContent } from './order/orderContent.ts';
import { type OrderRelation, orderRelation } from './order/relation.ts';
import type { MustHold } from './order/reshelving.ts';

/** The order of what stands on the children's shelves. */
export interface OrderMeasure {
  /** What it was made of: as long as that is the same, so is the measure, with trays as they were when it was made. */
  readonly content: OrderContent;
  /** Who has to come before whom, and the reading order. */
  readonly relation: OrderRelation;
  readonly inversions: Inversions;
  /** Strands in which something stands before what comes first. */
  readonly troubles: readonly StrandTrouble[];
  /** Circles that the class's own prerequisites make, as material ids, if something of them stands on a shelf. */
  readonly circles: readonly (readonly string[])[];
  /** What is known of carrying and reach, as the moves use it. */
  readonly carryNoteKg: CarryNoteKg;
  readonly isInReach: IsInReach;
  /** Places for trays that take one strand's trouble away, and bring nothing new where that can be; the rest stays. */
  mend(trouble: StrandTrouble): Mending;
  /** Every strand with a placed material, in reading order, as the report gives it. */
  strands(): readonly StrandOrder[];
}

/** One line of `measures.order` in the report. Lengths in mm, to 0.01. */
interface StrandOrder {
  readonly strand: string;
  readonly placed: number;
  /** The most that can stay where they are. */
  readonly inOrder: number;
  readonly moves: readonly OrderMove[];
}
interface OrderMove {
  readonly material: string;
  readonly to: { readonly piece: string; readonly side: Side; readonly level: string | null; readonly x: number };
}

/**
 * The fewest materials that have to move so that nothing stands before what comes first: all but the largest set in order,
 * which is the maximum antichain of the inversions, exact.
 * @param carryNoteKg kg that the youngest child meant for a material carries without a note
 * @param isInReach where the smallest child takes a tray from; moves go elsewhere only if there is no room
 * @param before the measure of before a change: handed on where the change was none to it, as when a shelf is moved
 */
export function orderOf(scene: Scene, carryNoteKg: CarryNoteKg, isInReach: IsInReach = () => true, before?: OrderMeasure): OrderMeasure {
  const content = orderContent(scene);
  if (before && isSameContent(before.content, content)) return before;
  // As they stand now: later on the scene may have moved on.
  const { classroom, sides, stands, materialById } = scene;
  const shelves: ShelvesScene = { classroom, sides, stands, materialById };
  const mendings = new Map<StrandTrouble, Mending>();
  let strands: readonly StrandOrder[] | null = null;
  const relation = orderRelation(scene);
  const inversions = inversionsOf(relation, { carryNoteKg, practicalLife: judgesPracticalLife(scene.classroom) });
  const troubles = troublesOf(relation, inversions);
  const by: InsertBy = { gap: trayGapOf(scene.classroom), isInReach };
  const isPlaced = (id: string) => (relation.columnOf.get(id) ?? Infinity) < relation.reading.length;
  const isJudged = (first: number, second: number): boolean => inversions.isAsked(first, second);
  return {
    content,
    relation,
    inversions,
    troubles,
    carryNoteKg,
    isInReach,
    circles: relation.graph.circles.filter((ids) => ids.some(isPlaced)),
    mend(trouble) {
      const known = mendings.get(trouble);
      if (known) return known;
      const { strand } = trouble;
      const mustHold: MustHold = (first, second) => relation.reading[second]?.material.strand.trim() === strand && isJudged(first, second);
      const mending = bestMending(shelves, relation, trouble, inversions, mustHold, by, carryNoteKg);
      mendings.set(trouble, mending);
      return mending;
    },
    strands() {
      strands ??= strandsOf(shelves, relation, inversions, isJudged, by);
      return strands;
    },
  };
}

function strandsOf(scene: ShelvesScene, relation: OrderRelation, inversions: Inversions, mustHold: MustHold, by: InsertBy): StrandOrder[] {
  const placed = new Map<string, string[]>();
  const moving: number[] = [];
  relation.reading.forEach(({ material }, position) => {
    const strand = material.strand.trim();
    const list = placed.get(strand);
    if (list) list.push(material.id);
    else placed.set(strand, [material.id]);
    if (inversions.moves[position] === 1) moving.push(position);
  });
  const places = moving.length === 0 ? [] : insertAll(scene, relation, moving, mustHold, by).places;
  const moves = new Map(
    places.map(({ material, board, x }): [string, OrderMove] => {
      const { piece, side, level } = board;
      return [material, { material, to: { piece: piece.id, side, level: level?.id ?? null, x: roundMm(x) } }];
    }),
  );
  return [...placed].map(([strand, ids]) => {
    const mine = ids.flatMap((id) => moves.get(id) ?? []);
    return { strand, placed: ids.length, inOrder: ids.length - mine.length, moves: mine };
  });
}
