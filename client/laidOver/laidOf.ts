import { type PieceChange, pieceChanges } from '#model/analysis/moveDay/differences.ts';
import type { Arrangement } from '#model/schema/types.ts';
import { pairOf } from '../moveDay/pairOf.ts';
import type { Session } from '../session/types.ts';
import { nameOfArrangement } from '../text/nameOfArrangement.ts';

/** The arrangement that lies under the shown one; null: none does. */
export function laidUnder(session: Session): Arrangement | null {
  const { laid } = session.view();
  return laid === null ? null : (session.classroom().arrangements.find(({ id }) => id === laid) ?? null);
}

/** The one to lay under: how the room stands, or when that is shown the next. Null: there is no other. */
export function otherOf(session: Session): Arrangement | null {
  const shown = session.arrangement();
  const pair = pairOf(session.classroom(), shown);
  return pair && (pair.from.id === shown.id ? pair.to : pair.from);
}

/** Lays the other one under the shown one, or takes it off again. */
export function toggleLaid(session: Session): void {
  if (session.view().laid !== null) {
    session.setView({ laid: null });
    session.announce('One arrangement is shown.');
    return;
  }
  const other = otherOf(session);
  if (!other) return;
  session.setView({ laid: other.id });
  session.announce(`"${nameOfArrangement(other)}" lies dashed under the shown one.`);
}

const kept = new WeakMap<Arrangement['pieces'], { readonly of: Arrangement['pieces']; readonly changes: readonly PieceChange[] }>();

/** From the one that lies under to the shown one; reckoned once for two lists of pieces. */
export function laidChanges(under: Arrangement, shown: Arrangement): readonly PieceChange[] {
  const known = kept.get(shown.pieces);
  if (known?.of === under.pieces) return known.changes;
  const changes = pieceChanges(under, shown);
  kept.set(shown.pieces, { of: under.pieces, changes });
  return changes;
}
