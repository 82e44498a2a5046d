import type { Scene, SceneSide } from '#model/scene/types.ts';
import type { View } from '../session/types.ts';

/** The shelf side whose front is shown: the one asked for, else that shelf's first, else the first of the class's walk. */
export function shownSide(scene: Scene, frontOf: View['frontOf']): SceneSide | null {
  const ofPiece = scene.sides.filter((side) => side.piece.id === frontOf?.piece);
  return ofPiece.find((side) => side.side === frontOf?.side) ?? ofPiece[0] ?? scene.sides[0] ?? null;
}

/** The next open side of the same shelf; null: it has one side only. */
export function otherSide(scene: Scene, side: SceneSide): SceneSide | null {
  const all = scene.sides.filter((each) => each.piece.id === side.piece.id);
  if (all.length < 2) return null;
  return all[(all.indexOf(side) + 1) % all.length] ?? null;
}
