import { distance, dot, lerp, type Point, sub } from '../geometry/vec.ts';
import type { Arrangement } from '../schema/types.ts';
import type { SceneRoom, SceneSide } from './types.ts';

/**
 * The shelf sides in the order a child meets them: the class's walk first, then the others
 * along the walls clockwise from the main door.
 */
export function inWalkOrder(sides: readonly SceneSide[], arrangement: Arrangement, room: SceneRoom): SceneSide[] {
  const start = mainDoorAt(room);
  const said = new Map(arrangement.walk?.map((step, index) => [`${step.piece}/${step.side}`, index]));
  const keyed = sides.map((side) => ({
    side,
    said: said.get(`${side.piece.id}/${side.side}`) ?? Infinity,
    along: alongWalls(room, lerp(side.edge.a, side.edge.b, 0.5), start),
  }));
  keyed.sort((p, q) => (p.said === q.said ? p.along - q.along : p.said - q.said));
  return keyed.map(({ side }) => side);
}

function mainDoorAt(room: SceneRoom): number {
  const main = room.openings.find((o) => o.isMain);
  return main ? alongWalls(room, lerp(main.a, main.b, 0.5), 0) : 0;
}

/** How far along the walls, clockwise from `start`, the wall point nearest to p lies (mm). */
function alongWalls(room: SceneRoom, p: Point, start: number): number {
  let best = Infinity;
  let at = 0;
  let run = 0;
  const ring = room.outline;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    const wall = sub(b, a);
    const wallLength = Math.hypot(wall.x, wall.y);
    const share = wallLength === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, a), wall) / wallLength ** 2));
    const away = distance(p, lerp(a, b, share));
    if (away < best) {
      best = away;
      at = run + share * wallLength;
    }
    run += wallLength;
  }
  return run === 0 ? 0 : (((at - start) % run) + run) % run;
}
