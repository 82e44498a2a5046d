import { cross, sub } from '#model/geometry/vec.ts';
import type { SceneOpening } from '#model/scene/types.ts';

/** Is a door's hinge at the jamb nearer the wall's start? Left and right are as seen by somebody who faces the wall from inside. */
export function hingesAtA({ raw, wall }: Pick<SceneOpening, 'raw' | 'wall'>): boolean {
  // In a room that runs clockwise the start of a wall is on the left of somebody who faces it.
  const runsClockwise = cross(sub(wall.b, wall.a), wall.inward) > 0;
  return raw.swing.endsWith('left') === runsClockwise;
}
