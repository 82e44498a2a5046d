import type { Report } from '#model/analysis/report.ts';
import type { Side } from '#model/schema/types.ts';

/** Where a misplaced tray belongs: x in mm from the left end of the board. */
export interface BelongsAt {
  readonly piece: string;
  readonly side: Side;
  readonly level: string | null;
  readonly x: number;
}

interface StrandOrder {
  readonly strand: string;
  readonly placed: number;
  readonly inOrder: number;
  readonly moves: readonly { readonly material: string; readonly to: BelongsAt | null }[];
}

const nowhere: ReadonlyMap<string, BelongsAt | null> = new Map();
const known = new WeakMap<Report, ReadonlyMap<string, BelongsAt | null>>();

/** The fewest trays to move, by material; null: it has to move, but no board has the room. The same map for the same report. */
export function orderMoves(report: Report | null): ReadonlyMap<string, BelongsAt | null> {
  if (!report) return nowhere;
  const kept = known.get(report);
  if (kept) return kept;
  const strands = (report.measures.order ?? []) as readonly StrandOrder[];
  const moves = new Map(strands.flatMap((strand) => strand.moves.map((move) => [move.material, move.to ?? null] as const)));
  known.set(report, moves);
  return moves;
}
