import { type PieceChange, pieceChanges } from '#model/analysis/moveDay/differences.ts';
import type { Arrangement } from '#model/schema/types.ts';

const kept = new WeakMap<Arrangement['pieces'], { readonly of: Arrangement['pieces']; readonly changes: readonly PieceChange[] }>();

/** From the one that lies under to the shown one; reckoned once for two lists of pieces. */
export function laidChanges(under: Arrangement, shown: Arrangement): readonly PieceChange[] {
  const known = kept.get(shown.pieces);
  if (known?.of === under.pieces) return known.changes;
  const changes = pieceChanges(under, shown);
  kept.set(shown.pieces, { of: under.pieces, changes });
  return changes;
}
