import type { Edit } from '#model/findings/edit.ts';
import type { SceneSide } from '#model/scene/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { Session } from '../session/types.ts';

/** mm: boards come at whole centimetres */
const STEP = 10;

/**
 * The boards between the lowest and the highest at equal distances (mm), as edits. A clear height that was typed for one
 * that moves, or for one below it, holds no longer.
 */
export function evenBoards({ piece }: SceneSide): Edit[] {
  const levels = [...piece.levels].sort((p, q) => p.surface - q.surface);
  const [lowest, highest] = [levels[0], levels.at(-1)];
  if (!lowest || !highest || levels.length < 3) return [];
  const apart = (highest.surface - lowest.surface) / (levels.length - 1);
  const wanted = levels.map((level, i) =>
    level === lowest || level === highest ? level.surface : Math.round((lowest.surface + i * apart) / STEP) * STEP,
  );
  return levels.flatMap((level, i): Edit[] => {
    const surface = wanted[i] as number;
    const isMoved = surface !== level.surface;
    const isUnderMoved = wanted[i + 1] !== undefined && wanted[i + 1] !== levels[i + 1]?.surface;
    if (!isMoved && !(isUnderMoved && level.clear !== null)) return [];
    const set = { ...(isMoved && { surface }), ...(level.clear !== null && { clear: null }) };
    return [{ do: 'change-level', piece: piece.id, level: level.id, set }];
  });
}

/** One step to take back, and said aloud. */
export function spaceBoards(session: Session, side: SceneSide): void {
  session.announce(space(session, side));
}

function space(session: Session, side: SceneSide): string {
  const edits = evenBoards(side);
  if (edits.length === 0) return 'The boards stand evenly already.';
  session.commands.applyEdits(session.arrangement().id, edits);
  const surfaces = side.piece.levels.map(({ surface }) => surface);
  const apart = (Math.max(...surfaces) - Math.min(...surfaces)) / (surfaces.length - 1);
  return `The boards are evenly spaced, about ${sayLength(apart, session.classroom().display.units)} from one to the next. See the checks whether each tray still fits.`;
}
