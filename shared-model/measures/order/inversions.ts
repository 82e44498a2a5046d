import type { SceneTray } from '../../scene/types.ts';
import type { Material } from '../../schema/types.ts';
import { type BitRows, maximumAntichain } from './antichain.ts';
import { forEachBit, hasBit, type OrderRelation } from './relation.ts';

/** kg that the youngest child meant to use a material carries without a note; null: not known. */
export type CarryNoteKg = (material: Material) => number | null;

export interface JudgeBy {
  /** What may stand on the lowest board whatever its step: anything heavier than this. */
  readonly carryNoteKg: CarryNoteKg;
  /** Whether what comes too early in practical life counts. */
  readonly practicalLife: boolean;
}

/** Pairs that stand the wrong way round: bit q of row p says that the tray at q has to come before the one at p and stands after it. */
export interface Inversions extends BitRows {
  /** 1 for each position that has to move: as few as possible. */
  readonly moves: Uint8Array;
  /** Whether any two placed materials have an order at all. */
  readonly isJudged: boolean;
  /** Whether the order of two positions is judged (heavy things below and practical life may not be). */
  isAsked(first: number, second: number): boolean;
}

export function inversionsOf(relation: OrderRelation, by: JudgeBy): Inversions {
  const { reading, words, before } = relation;
  const count = reading.length;
  const asked = askedColumns(relation, by);
  const rows = new Uint32Array(count * words);
  let isJudged = false;
  let isInverted = false;
  reading.forEach((tray, p) => {
    if (!isAsked(tray, by)) return;
    for (let w = 0; w < words; w++) {
      const earlier = (before[p * words + w] as number) & (asked[w] as number);
      if (earlier === 0) continue;
      isJudged = true;
      const inverted = earlier & behind(p, w);
      if (inverted === 0) continue;
      rows[p * words + w] = inverted;
      isInverted = true;
    }
  });
  const isAskedPair = (first: number, second: number): boolean => {
    const [u, v] = [reading[first], reading[second]];
    return u !== undefined && v !== undefined && !isExempt(u, by.carryNoteKg) && isAsked(v, by);
  };
  if (!isInverted) return { count, words, rows, moves: new Uint8Array(count), isJudged, isAsked: isAskedPair };
  const stays = maximumAntichain({ count, words, rows });
  return { count, words, rows, moves: stays.map((stay) => 1 - stay), isJudged, isAsked: isAskedPair };
}

/** Bits of word w for positions after p. */
function behind(p: number, w: number): number {
  const first = p + 1 - w * 32;
  if (first <= 0) return -1;
  return first >= 32 ? 0 : -1 << first;
}

/** A practical-life material is not asked for its prerequisites unless the class wants it. */
const isAsked = (tray: SceneTray, by: JudgeBy): boolean =>
  !isExempt(tray, by.carryNoteKg) && (by.practicalLife || tray.material.area !== 'practical-life');

function askedColumns({ reading, words }: OrderRelation, by: JudgeBy): Uint32Array {
  const bits = new Uint32Array(words);
  reading.forEach((tray, p) => {
    if (!isExempt(tray, by.carryNoteKg)) bits[p >>> 5] = (bits[p >>> 5] as number) | (1 << (p & 31));
  });
  return bits;
}

/** Heavy things belong on the lowest board, whatever their step. */
export function isExempt({ material, board }: SceneTray, carryNoteKg: CarryNoteKg): boolean {
  if (material.heaviest === null) return false;
  const note = carryNoteKg(material);
  if (note === null || material.heaviest <= note) return false;
  const lowest = board?.piece.levels.reduce<number>((least, level) => Math.min(least, level.surface), Infinity);
  return board?.level !== null && board?.level !== undefined && board.level.surface === lowest;
}

/** Positions whose inverted pairs are judged under a strand, and those of them that move. */
export interface StrandTrouble {
  readonly strand: string;
  /** Positions to move so that nothing of this strand stands before what comes first. */
  readonly moves: readonly number[];
  /** One pair as an example: `early` stands before `late`, which comes first. */
  readonly early: number;
  readonly late: number;
  /** True when a published or own edge says so, false for common practice alone. */
  readonly isSure: boolean;
}

/** Pairs across strands are judged under the strand of the material that stands too early. */
export function troublesOf(relation: OrderRelation, inversions: Inversions): StrandTrouble[] {
  const { reading, words, surelyBefore } = relation;
  const { rows, moves } = inversions;
  const found = new Map<string, { moves: Set<number>; early: number; late: number; isSure: boolean }>();
  reading.forEach((tray, p) => {
    let isInverted = false;
    for (let w = 0; w < words && !isInverted; w++) isInverted = rows[p * words + w] !== 0;
    if (!isInverted) return;
    const strand = tray.material.strand.trim();
    const so = found.get(strand) ?? { moves: new Set<number>(), early: -1, late: -1, isSure: false };
    found.set(strand, so);
    if (moves[p] === 1) so.moves.add(p);
    // A tray that moves itself settles all its pairs: nothing more to learn once there is a sure example.
    if (moves[p] === 1 && so.isSure) return;
    forEachBit(rows, words, p, (q) => {
      if (moves[p] !== 1) so.moves.add(q);
      if (so.isSure) return;
      const isSure = hasBit(surelyBefore, words, p, q);
      if (so.early !== -1 && !isSure) return;
      so.early = p;
      so.late = q;
      so.isSure = isSure;
    });
  });
  return [...found].map(([strand, so]) => ({ strand, ...so, moves: [...so.moves].sort((p, q) => p - q) }));
}
