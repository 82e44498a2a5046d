import type { Finding } from '#model/findings/finding.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Chosen, Session, View } from '../session/types.ts';

/** Shows a finding on the drawing and chooses the thing it is about. */
export function showFinding(session: Session, finding: Finding): void {
  const scene = session.scene();
  const { subjects, trays = [] } = finding;
  const own = chosenOf(subjects, scene);
  // Of several trays the one that its words begin with.
  const chosen = own?.kind === 'tray' ? chosenOf([...trays, ...subjects], scene) : own;
  const piece =
    chosen?.kind === 'piece'
      ? scene.bodyById.get(chosen.id)?.piece
      : chosen?.kind === 'tray'
        ? scene.stands.get(chosen.id)?.board?.piece
        : null;
  const side = piece?.kind === 'shelf' ? piece.sides[0] : undefined;
  const change: Partial<View> = {
    finding: finding.key,
    chosen,
    ...(piece && side && { frontOf: { piece: piece.id, side } }),
  };
  session.setView(change);
}

/** The first subject that can be chosen on a drawing. */
export function chosenOf(subjects: readonly string[], scene: Scene): Chosen | null {
  for (const id of subjects) {
    const body = scene.bodyById.get(id);
    if (body) return { kind: body.source, id };
    if (scene.room.openings.some((opening) => opening.id === id)) return { kind: 'opening', id };
    if (id.startsWith('wall:')) return { kind: 'wall', id: id.slice('wall:'.length) };
    if (scene.classroom.room.corners.some((corner) => corner.id === id)) return { kind: 'corner', id };
    if (scene.materialById.has(id)) return { kind: 'tray', id };
    // A board is named by its shelf.
    const shelf = scene.arrangement.pieces.find((piece) => piece.levels.some((level) => level.id === id));
    if (shelf) return { kind: 'piece', id: shelf.id };
  }
  return null;
}
