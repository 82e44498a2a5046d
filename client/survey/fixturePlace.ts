import { cross, distance, dot, inwardNormal, type Point, scale, sub } from '#model/geometry/vec.ts';
import { buildRoom } from '#model/scene/room.ts';
import type { SceneWall } from '#model/scene/types.ts';
import type { Fixture, Room } from '#model/schema/types.ts';
import { cornersOf, reachAlong, type TurnedBox, tidyDegrees } from '../plan/box.ts';
import { facingFrom, nearestOn } from '../plan/snap.ts';

/** Where a fixture stands: mm from the faces of two walls, and how it is turned to the first. */
export interface Sides {
  readonly wall: string;
  readonly gap: number;
  readonly side: string;
  readonly along: number;
  readonly turned: number;
}

/** Walls that run within so many degrees of one another fix no place between them. */
const APART = Math.sin((20 * Math.PI) / 180);
const mm = (value: number): number => Math.round(value * 10) / 10;

type Face = Pick<SceneWall, 'a' | 'b' | 'inward'>;
const areApart = (p: Face, q: Face): boolean => Math.abs(cross(p.inward, q.inward)) > APART;

/** mm from a wall's face to the nearest point of the box, less than nothing behind the face. */
const gapTo = (box: TurnedBox, wall: Face): number => dot(sub(box, wall.a), wall.inward) - reachAlong(box, wall.inward);

/** The two walls a fixture of a room is nearest to, with its distances from them; null: no two walls meet. */
export function sidesOf(room: Room, fixture: Fixture): Sides | null {
  const { walls } = buildRoom(room);
  const near = (wall: SceneWall): number => Math.min(...[fixture, ...cornersOf(fixture)].map((p) => distance(p, nearestOn(wall, p))));
  const byNearness = walls.filter(({ a, b }) => distance(a, b) > 0).sort((p, q) => near(p) - near(q));
  const [wall] = byNearness;
  const side = wall && byNearness.find((other) => areApart(wall, other));
  if (!wall || !side) return null;
  return {
    wall: wall.corner,
    gap: mm(gapTo(fixture, wall)),
    side: side.corner,
    along: mm(gapTo(fixture, side)),
    turned: tidyDegrees(fixture.rotation - facingFrom(wall)),
  };
}

/** The face of a wall of a ring of corners, seen from inside. */
export function faceOf(ring: readonly Point[], index: number, isClockwise: boolean): Face {
  const [a, b] = [ring[index] as Point, ring[(index + 1) % ring.length] as Point];
  return { a, b, inward: scale(inwardNormal(a, b), isClockwise ? 1 : -1) };
}

/** Centre (mm) and rotation of a box so far from two walls; null where they run side by side. */
export function placeByWalls(
  box: Pick<TurnedBox, 'width' | 'depth'>,
  turned: number,
  wall: Face & { readonly gap: number },
  side: Face & { readonly gap: number },
): { x: number; y: number; rotation: number } | null {
  if (!areApart(wall, side)) return null;
  const rotation = tidyDegrees(facingFrom(wall) + turned);
  const along = ({ a, inward, gap }: Face & { gap: number }): number => dot(a, inward) + gap + reachAlong({ ...box, rotation }, inward);
  const [p, q] = [along(wall), along(side)];
  const whole = cross(wall.inward, side.inward);
  return {
    x: mm((p * side.inward.y - q * wall.inward.y) / whole),
    y: mm((q * wall.inward.x - p * side.inward.x) / whole),
    rotation,
  };
}
