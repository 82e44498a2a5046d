import type { Report } from '#model/analysis/report.ts';
import type { Side } from '#model/schema/types.ts';

/** Where a misplaced tray belongs: x in mm from the left end of the board, once all is mended. */
export interface BelongsAt {
  readonly piece: string;
  readonly side: Side;
  readonly level: string | null;
  readonly x: number;
  /** Where other trays then stand that have to slide along (mm). */
  readonly slid?: ReadonlyMap<string, number>;
}

interface StrandOrder {
  readonly moves: readonly { readonly material: string; readonly to: BelongsAt | null }[];
}

const nowhere: ReadonlyMap<string, BelongsAt | null> = new Map();
const known = new WeakMap<Report, ReadonlyMap<string, BelongsAt | null>>();

/**
 * The fewest trays to move, by material; null: it has to move, but no board has the room. Where a check offers a fix,
 * the places are the fix's own. The same map for the same report.
 */
export function orderMoves(report: Report | null): ReadonlyMap<string, BelongsAt | null> {
  if (!report) return nowhere;
  const kept = known.get(report);
  if (kept) return kept;
  const strands = (report.measures.order ?? []) as readonly StrandOrder[];
  const moves = new Map(strands.flatMap((strand) => strand.moves.map((move) => [move.material, move.to ?? null] as const)));
  for (const finding of report.findings) {
    if (finding.rule !== 'order/sequence' || !finding.fix) continue;
    const placed = finding.fix.edits.flatMap((edit) => (edit.do === 'place' ? [edit.placement] : []));
    const slid = new Map(placed.filter(({ material }) => !moves.has(material)).map(({ material, x }) => [material, x]));
    for (const { material, piece, side, level, x } of placed)
      if (piece !== null && moves.has(material)) moves.set(material, { piece, side, level, x, slid });
  }
  known.set(report, moves);
  return moves;
}

/** Whether a tray that stays comes left of where a misplaced one belongs: left edges, as they are once all is mended. */
export const isLeftOf = (stays: { readonly id: string; readonly x: number }, to: BelongsAt): boolean =>
  (to.slid?.get(stays.id) ?? stays.x) < to.x - 0.5;
