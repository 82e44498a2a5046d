import type { Session } from '#client/session/types.ts';
import type { Room } from '#model/schema/types.ts';
import { openingChanges } from './roomShape.ts';

/** Corners and what had to slide with them, as one step to take back. */
export function writeRoom(session: Session, before: Room, after: Room): void {
  const { commands, undo } = session;
  undo.beginStep();
  const moved = after.corners.filter((corner, i) => corner.x !== before.corners[i]?.x || corner.y !== before.corners[i]?.y);
  for (const corner of moved) commands.moveCorner(corner.id, { x: corner.x, y: corner.y });
  for (const { id, offset } of openingChanges(before, after)) commands.changeOpening(id, { offset });
  undo.endStep();
}
