import type { Point } from '#model/geometry/vec.ts';
import { compassWord } from './compass.ts';

interface Walled {
  /** Into the room. */
  readonly inward: Point;
}

/** The side of the sheet a wall stands on: the one its inside looks away from. */
const sideOf = ({ inward }: Walled): string => compassWord({ x: -inward.x, y: -inward.y });

/** "east wall"; "east wall 2" in a room that has several. */
export function wallName(walls: readonly Walled[], wall: Walled): string {
  const alike = walls.filter((one) => sideOf(one) === sideOf(wall));
  return `${sideOf(wall)} wall${alike.length > 1 ? ` ${alike.indexOf(wall) + 1}` : ''}`;
}
