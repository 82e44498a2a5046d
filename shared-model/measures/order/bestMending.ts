import type { SceneTray, ShelvesScene } from '../../scene/types.ts';
import { joinsPracticalLife } from './classOptions.ts';
import { exchange } from './exchange.ts';
import { type InsertBy, insertAll, type Mending } from './insertion.ts';
import { type CarryNoteKg, type Inversions, isExempt, type StrandTrouble } from './inversions.ts';
import { forEachBit, hasBit, type OrderRelation } from './relation.ts';
import type { MustHold, Shortage } from './reshelving.ts';
import { cutStrands, strandRuns } from './strandRuns.ts';

/** Materials on shelves up to which other ways are looked at: pairs of them are counted. */
const MOST_READ = 600;
/** So many things more than the fewest may move, where that brings nothing new. */
const MORE_MOVES = 2;

/**
 * The mend of one strand's trouble that moves the fewest; where that crowds a board, leaves the smallest child's reach,
 * cuts a strand or turns another pair round, the first of these that does not: the other trays of the same pairs moved
 * instead, or the two that stand wrong exchanged. Where each brings something, the one that brings least; where each lacks
 * room, what stands in the way on the boards that are too short moves as well.
 */
export function bestMending(
  scene: ShelvesScene,
  relation: OrderRelation,
  trouble: StrandTrouble,
  inversions: Inversions,
  mustHold: MustHold,
  by: InsertBy,
  carryNoteKg: CarryNoteKg,
): Mending {
  const first = insertAll(scene, relation, trouble.moves, mustHold, by);
  if (relation.reading.length > MOST_READ) return first;
  const faultsNow = faultCounter(relation, trouble.strand, inversions, cutsCounter(scene, relation, carryNoteKg));
  let best = { mending: first, faults: faultsNow(first) };
  const { early, late } = pairsOf(relation, trouble.strand, inversions);
  const others = function* (): Generator<Mending | null> {
    for (const moves of [late, early])
      if (moves.length <= trouble.moves.length + MORE_MOVES && !isSame(moves, trouble.moves))
        yield insertAll(scene, relation, moves, mustHold, by);
    const [one, other] = [early[0], late[0]];
    if (early.length === 1 && late.length === 1 && one !== undefined && other !== undefined)
      yield exchange(scene, relation, one, other, by);
  };
  if (best.faults === 0) return first;
  for (const mending of others()) {
    if (!mending) continue;
    const faults = faultsNow(mending);
    if (faults < best.faults) best = { mending, faults };
    if (faults === 0) break;
  }
  for (let more = 0; more < MORE_MOVES && best.mending.shortages.length > 0; more++) {
    const { moves, shortages } = best.mending;
    let isBetter = false;
    for (const position of standingOn(relation, shortages)) {
      if (moves.includes(position)) continue;
      const mending = insertAll(scene, relation, [...moves, position], mustHold, by);
      const faults = faultsNow(mending);
      if (faults >= best.faults) continue;
      best = { mending, faults };
      isBetter = true;
    }
    if (!isBetter) break;
  }
  return best.mending;
}

/** Positions of what stands on boards that lack room. */
function standingOn({ reading }: OrderRelation, shortages: readonly Shortage[]): number[] {
  const boards = new Set(shortages.map(({ board }) => board));
  return reading.flatMap(({ board }, position) => (board && boards.has(board) ? [position] : []));
}

const isSame = (p: readonly number[], q: readonly number[]): boolean => p.length === q.length && p.every((one, i) => one === q[i]);

/** Positions of a strand that stand too early, and those that come too late for them. */
function pairsOf({ reading, words }: OrderRelation, strand: string, { rows }: Inversions): { early: number[]; late: number[] } {
  const late = new Set<number>();
  const early = reading.flatMap((tray, p) => {
    if (tray.material.strand.trim() !== strand) return [];
    let isEarly = false;
    forEachBit(rows, words, p, (q) => {
      isEarly = true;
      late.add(q);
    });
    return isEarly ? [p] : [];
  });
  return { early, late: [...late].sort((p, q) => p - q) };
}

/** How much a mend leaves or brings, as a number to compare by; 0: nothing. */
function faultCounter(
  { reading, words, before, columnOf }: OrderRelation,
  strand: string,
  inversions: Inversions,
  cutsOf: (trays: readonly SceneTray[]) => Set<string>,
): (mending: Mending) => number {
  const cutBefore = cutsOf(reading);
  return ({ shortages, isSqueezed, isBeyondReach, readAfter }) => {
    const columns = readAfter().flatMap((id) => columnOf.get(id) ?? []);
    const trays = columns.flatMap((column) => reading[column] ?? []);
    let [left, turned] = [0, 0];
    for (const [i, p] of columns.entries())
      for (let j = i + 1; j < columns.length; j++) {
        const q = columns[j] as number;
        if (!hasBit(before, words, p, q) || !inversions.isAsked(q, p)) continue;
        if (reading[p]?.material.strand.trim() === strand) left++;
        else if (!hasBit(inversions.rows, words, p, q)) turned++;
      }
    const cuts = [...cutsOf(trays)].filter((name) => !cutBefore.has(name)).length;
    // What leaves the strand out of order is no mend; what turns others round is hardly one.
    return shortages.length * 1000 + left * 100 + turned * 20 + (isBeyondReach ? 10 : 0) + (isSqueezed ? 1 : 0) + cuts;
  };
}

/** Strands that others cut, as order/strand tells them. */
function cutsCounter(
  scene: ShelvesScene,
  { before, words, columnOf }: OrderRelation,
  carryNoteKg: CarryNoteKg,
): (trays: readonly SceneTray[]) => Set<string> {
  const isAsked = joinsPracticalLife(scene.classroom);
  const columnOfTray = (tray: SceneTray): number => columnOf.get(tray.material.id) ?? 0;
  const isBefore = (first: SceneTray, second: SceneTray): boolean => hasBit(before, words, columnOfTray(second), columnOfTray(first));
  return (trays) => {
    const asked = trays.filter((tray) => !isExempt(tray, carryNoteKg) && (isAsked || tray.material.area !== 'practical-life'));
    return new Set(cutStrands(strandRuns(asked), isBefore).map((cut) => cut.strand));
  };
}
