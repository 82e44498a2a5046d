import { distance, dot, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { SceneRoom, SceneWall } from '#model/scene/types.ts';
import type { Corner, Opening, Room } from '#model/schema/types.ts';
import { closest, nearestOn } from './snap.ts';

/** mm: what is drawn by hand lands on whole centimetres. */
const GRID = 10;
export const toGrid = (mm: number): number => Math.round(mm / GRID) * GRID;

/** Where an opening of a width comes to lie on the wall nearest to a point; null when there is no wall. */
export function placeOnWall(room: SceneRoom, p: Point, width: number): { wall: SceneWall; offset: number; width: number } | null {
  const wall = closest(room.walls, (w) => distance(p, nearestOn(w, p)));
  if (!wall) return null;
  const long = distance(wall.a, wall.b);
  const fits = Math.min(width, long);
  return { wall, offset: slideOn(wall, p, fits), width: fits };
}

/** The offset (mm from the wall's start) that centres a width on a point, within the wall and drawn to its ends and middle. */
export function slideOn(wall: SceneWall, p: Point, width: number): number {
  const long = distance(wall.a, wall.b);
  const at = dot(sub(p, wall.a), unit(sub(wall.b, wall.a))) - width / 2;
  const most = Math.max(0, long - width);
  const near = [0, most / 2, most].find((mark) => Math.abs(mark - at) < 60);
  return near ?? Math.min(most, Math.max(0, toGrid(at)));
}

/** The room with one corner elsewhere. Openings keep their distance from the start of their wall. */
export function withCorner(room: Room, id: string, to: Point): Room {
  const corners = room.corners.map((corner) => (corner.id === id ? { ...corner, x: to.x, y: to.y } : corner));
  return keepOpeningsOnWalls({ ...room, corners });
}

/** A corner drawn so that its walls stand square, when it is brought near to that. */
export function squareCorner(room: Room, id: string, p: Point, tolerance: number): Point {
  const index = room.corners.findIndex((corner) => corner.id === id);
  const count = room.corners.length;
  const neighbours = [room.corners[(index + count - 1) % count], room.corners[(index + 1) % count]];
  const pull = (axis: 'x' | 'y'): number => {
    const marks = neighbours.flatMap((corner) => (corner && Math.abs(corner[axis] - p[axis]) <= tolerance ? [corner[axis]] : []));
    return closest(marks, (mark) => Math.abs(mark - p[axis])) ?? toGrid(p[axis]);
  };
  return { x: pull('x'), y: pull('y') };
}

/** The wall from corner `id` moved along its normal (mm, into the room is positive); doors and windows beside it stay where they are. */
export function withWallMoved(room: Room, wall: SceneWall, by: number): Room {
  return shifted(room, wall.corner, scale(wall.inward, by));
}

/**
 * The wall from corner `id` made so long (mm) by moving the next wall whole, so that square rooms stay square.
 * @returns the room as it was when the corner is not there.
 */
export function withWallLength(room: Room, id: string, length: number): Room {
  const index = room.corners.findIndex((corner) => corner.id === id);
  const a = room.corners[index];
  const b = room.corners[(index + 1) % room.corners.length];
  if (!a || !b || distance(a, b) === 0) return room;
  return shifted(room, b.id, scale(unit(sub(b, a)), length - distance(a, b)));
}

/** The wall from corner `id` shifted whole: both its corners. */
function shifted(room: Room, id: string, by: Point): Room {
  const count = room.corners.length;
  const index = room.corners.findIndex((corner) => corner.id === id);
  const next = (index + 1) % count;
  const corners = room.corners.map((corner, i) =>
    i === index || i === next ? { ...corner, x: corner.x + by.x, y: corner.y + by.y } : corner,
  );
  const after = room.corners[next];
  const beyond = room.corners[(next + 1) % count];
  if (!after || !beyond) return room;
  // The wall after this one starts elsewhere now, so its openings count from elsewhere.
  const slide = dot(by, unit(sub(beyond, after)));
  const openings = room.openings.map((opening) =>
    opening.from === after.id ? { ...opening, offset: Math.max(0, opening.offset - slide) } : opening,
  );
  return keepOpeningsOnWalls({ ...room, corners, openings });
}

/** Openings pushed back onto a wall that has become too short for them; one wider than its wall stays as it is, to be seen. */
function keepOpeningsOnWalls(room: Room): Room {
  const openings = room.openings.map((opening) => {
    const long = wallLength(room.corners, opening.from);
    if (long === null || opening.offset + opening.width <= long) return opening;
    return { ...opening, offset: Math.max(0, long - opening.width) };
  });
  return { ...room, openings };
}

/** mm; null when no wall starts there */
export function wallLength(corners: readonly Corner[], from: string): number | null {
  const index = corners.findIndex((corner) => corner.id === from);
  const a = corners[index];
  const b = corners[(index + 1) % corners.length];
  return a && b ? distance(a, b) : null;
}

/** New walls for old doors: each opening goes to the new wall nearest to where it was. */
export function openingsOnNewWalls(old: SceneRoom, fresh: SceneRoom): Pick<Opening, 'id' | 'from' | 'offset'>[] {
  return old.openings.flatMap((opening) => {
    const middle = { x: (opening.a.x + opening.b.x) / 2, y: (opening.a.y + opening.b.y) / 2 };
    const place = placeOnWall(fresh, middle, opening.raw.width);
    return place ? [{ id: opening.id, from: place.wall.corner, offset: place.offset }] : [];
  });
}

/** What differs between two rooms' openings, as changes to write. */
export function openingChanges(before: Room, after: Room): { id: string; offset: number }[] {
  return after.openings.flatMap((opening) => {
    const was = before.openings.find((o) => o.id === opening.id);
    return was && was.offset !== opening.offset ? [{ id: opening.id, offset: opening.offset }] : [];
  });
}
