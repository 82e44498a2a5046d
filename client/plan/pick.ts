import { area, contains, edges } from '#model/geometry/polygon.ts';
import { distance, dot, type Point, sub } from '#model/geometry/vec.ts';
import type { SceneBody, SceneRoom } from '#model/scene/types.ts';
import type { Arrangement, Room } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from './bodies.ts';
import type { Item } from './items.ts';
import { closest, nearestOn } from './snap.ts';

/** mm: how thick walls are drawn, and so pressed */
const WALL = 160;

/**
 * What lies under a point (mm): the smallest thing there, else the nearest within reach; then doors and
 * windows, corners, walls. `reach` in mm is how far off a finger may be.
 */
export function itemAt(p: Point, arrangement: Pick<Arrangement, 'pieces'>, room: Room, reach: number): Item | null {
  const shape = shapeOfRoom(room);
  return (
    bodyAt(p, arrangement, room, 0) ??
    openingAt(p, shape, reach) ??
    cornerAt(p, room, reach) ??
    bodyAt(p, arrangement, room, reach) ??
    wallAt(p, shape, reach)
  );
}

function bodyAt(p: Point, arrangement: Pick<Arrangement, 'pieces'>, room: Room, reach: number): Item | null {
  const bodies = [...arrangement.pieces.map(bodyOfPiece), ...room.fixtures.map(bodyOfFixture)];
  const near = bodies.filter((body) => distance(body.center, p) <= Math.hypot(body.width, body.depth) + reach);
  if (reach === 0) {
    // A rug lies under everything; of two things over each other the smaller one is meant.
    const hit = closest(
      near.filter((body) => contains(body.footprint, p)),
      (body) => (body.kind === 'rug' ? 1e12 : 0) + area(body.footprint),
    );
    return hit ? itemOf(hit) : null;
  }
  const nearest = closest(near, (body) => distanceTo(body, p));
  return nearest && distanceTo(nearest, p) <= reach ? itemOf(nearest) : null;
}

const itemOf = (body: SceneBody): Item => ({ kind: body.source, id: body.id });

const distanceTo = (body: SceneBody, p: Point): number =>
  contains(body.footprint, p) ? 0 : Math.min(...edges(body.footprint).map((edge) => distance(nearestOn(edge, p), p)));

function openingAt(p: Point, room: SceneRoom, reach: number): Item | null {
  const hit = room.openings.find(({ a, b, wall }) => {
    const over = dot(sub(p, wall.a), wall.inward);
    return over > -WALL - reach && over < Math.max(60, reach) && distance(nearestOn({ a, b }, p), p) < WALL + reach;
  });
  return hit ? { kind: 'opening', id: hit.id } : null;
}

function cornerAt(p: Point, room: Room, reach: number): Item | null {
  const nearest = closest(room.corners, (corner) => distance(corner, p));
  return nearest && distance(nearest, p) <= Math.max(WALL, reach) ? { kind: 'corner', id: nearest.id } : null;
}

function wallAt(p: Point, room: SceneRoom, reach: number): Item | null {
  const hit = room.walls.find((wall) => {
    const over = dot(sub(p, wall.a), wall.inward);
    return over > -WALL - reach && over < reach / 2 && distance(nearestOn(wall, p), p) <= WALL + reach;
  });
  return hit ? { kind: 'wall', id: hit.corner } : null;
}
