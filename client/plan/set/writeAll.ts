import type { Session } from '#client/session/types.ts';
import type { Edit } from '#model/findings/edit.ts';
import type { Fixture } from '#model/schema/types.ts';

/** mm, degrees clockwise */
export type Place = { readonly x: number; readonly y: number; readonly rotation: number };
/** Where things stand, by their ids. */
export type Places = ReadonlyMap<string, Place>;

/** Where things now stand, with what else changes on them: all pieces in one transaction. */
export function writeAll(session: Session, places: Places, also: readonly Edit[], room: (id: string) => Partial<Fixture>): void {
  const { commands } = session;
  const arrangement = session.arrangement();
  const isPiece = new Set(arrangement.pieces.map(({ id }) => id));
  const edits: Edit[] = [...also];
  for (const [id, { x, y, rotation }] of places) {
    if (isPiece.has(id)) edits.push({ do: 'move-piece', piece: id, x, y, rotation });
    else commands.changeFixture(id, { x, y, rotation, ...room(id) });
  }
  if (edits.length > 0) commands.applyEdits(arrangement.id, edits);
}
