import type { Box } from '#model/geometry/polygon.ts';
import { distance } from '#model/geometry/vec.ts';
import type { SceneRoom, SceneWall } from '#model/scene/types.ts';

/** Of 1: a wall up to some three degrees off the axes counts as along them. */
const LEVEL = 0.055;
/** mm: what a neighbour that leans leaves between a wall and the edge */
const EDGE = 100;

/** On the edge of the whole drawing, or slanted: strings of inner corners would run through doors and names. */
export function isOutermost(wall: SceneWall, bounds: Box): boolean {
  const isSlanted = Math.min(Math.abs(wall.inward.x), Math.abs(wall.inward.y)) > LEVEL;
  // A wall that leans reaches the edge with one end alone.
  const lean = distance(wall.a, wall.b) * LEVEL;
  const isOn = (axis: 'x' | 'y', at: number): boolean => {
    const off = [wall.a, wall.b].map((end) => Math.abs(end[axis] - at));
    const along = axis === 'x' ? wall.inward.x : wall.inward.y;
    return Math.abs(along) > 0.9 && Math.min(...off) < EDGE && Math.max(...off) < lean + EDGE;
  };
  return isSlanted || isOn('x', bounds.minX) || isOn('x', bounds.maxX) || isOn('y', bounds.minY) || isOn('y', bounds.maxY);
}

/** Where the openings of a wall begin and end, with the wall's own ends: mm from its start, in order. */
export function cutsOf(room: Pick<SceneRoom, 'openings'>, wall: SceneWall): number[] {
  const long = distance(wall.a, wall.b);
  const cuts = new Set([0, long]);
  for (const opening of room.openings) {
    if (opening.wall !== wall) continue;
    cuts.add(Math.min(long, opening.raw.offset));
    cuts.add(Math.min(long, opening.raw.offset + opening.raw.width));
  }
  return [...cuts].sort((p, q) => p - q);
}
