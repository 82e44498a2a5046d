import type { Report } from '#model/analysis/report.ts';
import type { Finding } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Placement, Side } from '#model/schema/types.ts';

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
const known = new WeakMap<Report, { readonly stands: Scene['stands']; readonly moves: ReadonlyMap<string, BelongsAt | null> }>();

/**
 * The fewest trays to move, by material; null: it has to move, but no board has the room. Where a check offers a fix, they
 * are the trays that the fix moves, which may be others than the fewest, and the places are the fix's own; what only slides
 * along for them is not moved. The same map for the same report and scene.
 */
export function orderMoves(report: Report | null, scene: Pick<Scene, 'stands' | 'materialById'>): ReadonlyMap<string, BelongsAt | null> {
  if (!report) return nowhere;
  const kept = known.get(report);
  if (kept?.stands === scene.stands) return kept.moves;
  const strands = (report.measures.order ?? []) as readonly StrandOrder[];
  const moves = new Map(strands.flatMap((strand) => strand.moves.map((move) => [move.material, move.to ?? null] as const)));
  for (const finding of report.findings) {
    if (finding.rule !== 'order/sequence' || !finding.fix) continue;
    const placed = finding.fix.edits.flatMap((edit) => (edit.do === 'place' ? [edit.placement] : []));
    const moved = new Set(movedBy(placed, finding, scene));
    const slid = new Map(placed.filter(({ material }) => !moved.has(material)).map(({ material, x }) => [material, x]));
    for (const id of finding.subjects) if (!moved.has(id)) moves.delete(id);
    for (const { material, piece, side, level, x } of placed)
      if (piece !== null && moved.has(material)) moves.set(material, { piece, side, level, x, slid });
  }
  known.set(report, { stands: scene.stands, moves });
  return moves;
}

/** What a fix moves to another board, or past a neighbour of its own; of two that change places, the one that its words name. */
function movedBy(
  placed: readonly Placement[],
  { fix, subjects }: Finding,
  { stands, materialById }: Pick<Scene, 'stands' | 'materialById'>,
) {
  const isTold = (id: string): boolean => fix?.label.includes(materialById.get(id)?.name ?? id) ?? false;
  // The words of a fix name the first few.
  const isNamed = placed.some(({ material }) => isTold(material)) && !/ and \d+ more/.test(fix?.label ?? '');
  const moved = placed.filter((then) => {
    const now = stands.get(then.material);
    if (!now || !isOnBoard(now.placement, then)) return true;
    if (isNamed ? !isTold(then.material) : !subjects.includes(then.material)) return false;
    return (now.board?.trays ?? []).some((other) => {
      const otherThen = placed.find(({ material }) => material === other.material.id) ?? other.placement;
      return isOnBoard(otherThen, then) && Math.sign(other.placement.x - now.placement.x) !== Math.sign(otherThen.x - then.x);
    });
  });
  return moved.map(({ material }) => material);
}

const isOnBoard = (p: Placement, q: Placement): boolean => p.piece === q.piece && p.side === q.side && p.level === q.level;

/** Whether a tray that stays comes left of where a misplaced one belongs: left edges, as they are once all is mended. */
export const isLeftOf = (stays: { readonly id: string; readonly x: number }, to: BelongsAt): boolean =>
  (to.slid?.get(stays.id) ?? stays.x) < to.x - 0.5;
