import { type Closest, closestOfParts } from '../geometry/closest.ts';
import { addGap, byWidthThenParts, type Gap, mergedGaps } from '../geometry/gaps.ts';
import { distanceToPart, makePart, type Part } from '../geometry/parts.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { add, distance, dot, lerp, type Point, scale, sub, unit } from '../geometry/vec.ts';
import type { SceneOpening } from '../scene/types.ts';
import type { WaysField } from './waysField.ts';

/**
 * A door or passage that people come from, opened as an alcove outside the wall: as wide as the clear opening, 1.5
 * times as deep, its source in the middle.
 */
export interface OpenDoor {
  readonly opening: SceneOpening;
  /** mm of clear opening */
  readonly clear: number;
  /** null: the alcove would lie over another part of the room, so only discs at the door's inner line tell. */
  readonly alcove: Alcove | null;
}

export interface Alcove {
  readonly source: Point;
  /** The alcove's own floor. */
  readonly ring: Polygon;
  /** mm: the widest disc round the source */
  readonly room: number;
  /** The field's parts with the opening's wall cut in two, then the alcove's sides. */
  readonly parts: readonly Part[];
  /** Gaps narrower than the clear opening, narrowest first. */
  readonly gaps: readonly Gap[];
}

const DEPTHS = [1.5, 1.25, 1];

/** The door opened; kept for the field. @param limit mm: wider gaps are of no interest */
export function openDoor(field: WaysField, opening: SceneOpening, limit: number): OpenDoor {
  const before = field.doors.get(opening);
  if (before?.limit === limit) return before.door;
  const door = makeDoor(field, opening, limit);
  field.doors.set(opening, { limit, door });
  return door;
}

function makeDoor(field: WaysField, opening: SceneOpening, limit: number): OpenDoor {
  const { wall } = opening;
  const along = unit(sub(wall.b, wall.a));
  const wallLength = distance(wall.a, wall.b);
  const within = (p: Point): number => Math.min(wallLength, Math.max(0, dot(sub(p, wall.a), along)));
  const from = within(opening.clearA);
  const to = within(opening.clearB);
  const clear = to - from;
  if (clear <= 0) return { opening, clear: 0, alcove: null };
  const left = add(wall.a, scale(along, from));
  const right = add(wall.a, scale(along, to));
  const depth = DEPTHS.map((share) => share * clear).find((d) => isOutside(field, opening, left, right, d));
  if (depth === undefined) return { opening, clear, alcove: null };
  return { opening, clear, alcove: makeAlcove(field, opening, left, right, depth, Math.min(limit, clear)) };
}

function makeAlcove(field: WaysField, { wall }: SceneOpening, left: Point, right: Point, depth: number, limit: number): Alcove {
  const out = scale(wall.inward, -depth);
  const farLeft = add(left, out);
  const farRight = add(right, out);
  const wallAt = field.wallIndex.get(wall.id) as number;
  const first = field.parts.length;
  const parts = [...field.parts];
  parts[wallAt] = makePart(wall.id, [wall.a, left]);
  parts.push(
    makePart(wall.id, [right, wall.b]),
    makePart(wall.id, [left, farLeft]),
    makePart(wall.id, [farLeft, farRight]),
    makePart(wall.id, [farRight, right]),
  );
  const others = field.gaps(limit).filter((gap) => gap.i !== wallAt && gap.j !== wallAt);
  const own: Gap[] = [];
  const fresh = [wallAt, first, first + 1, first + 2, first + 3];
  fresh.forEach((i, k) => {
    for (const j of field.grid.near(parts[i] as Part, limit)) if (j !== wallAt) addGap(parts, i, j, limit, own);
    for (const j of fresh.slice(k + 1)) addGap(parts, i, j, limit, own);
  });
  const source = add(lerp(left, right, 0.5), scale(out, 0.5));
  const gaps = mergedGaps(others, own.sort(byWidthThenParts));
  return { source, ring: [left, right, farRight, farLeft], room: roomRound(field, source, parts, fresh), parts, gaps };
}

/**
 * The field's parts with doors cut open for a walking body of a radius (mm) whose centre may come to the walls'
 * line; behind it each is shut again, so that no walk leads through the outside.
 */
export function partsWithDoorsOpen(field: WaysField, openings: readonly SceneOpening[], radius: number): Part[] {
  const parts: Part[] = field.parts.slice(field.wallIndex.size);
  for (const wall of field.scene.room.walls) {
    const along = unit(sub(wall.b, wall.a));
    const out = scale(wall.inward, -radius);
    const cuts = openings
      .filter((o) => o.wall.id === wall.id)
      .map((o) => [dot(sub(o.clearA, wall.a), along), dot(sub(o.clearB, wall.a), along)] as const)
      .sort((p, q) => p[0] - q[0]);
    let from = 0;
    for (const [start, end] of cuts) {
      const a = add(wall.a, scale(along, start));
      const b = add(wall.a, scale(along, end));
      parts.push(makePart(wall.id, [add(wall.a, scale(along, from)), a]), makePart(wall.id, [add(a, out), add(b, out)]));
      from = end;
    }
    parts.push(makePart(wall.id, [add(wall.a, scale(along, from)), wall.b]));
  }
  return parts;
}

/** No other wall of the room runs through the alcove. */
function isOutside(field: WaysField, { wall }: SceneOpening, left: Point, right: Point, depth: number): boolean {
  const inset = 0.5;
  const along = scale(unit(sub(right, left)), Math.min(inset, distance(left, right) / 4));
  const near = scale(wall.inward, -inset);
  const far = scale(wall.inward, inset - depth);
  const box = makePart('', [
    add(add(left, along), near),
    add(sub(right, along), near),
    add(sub(right, along), far),
    add(add(left, along), far),
  ]);
  const closest: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  for (const [id, index] of field.wallIndex) {
    if (id === wall.id) continue;
    closestOfParts(box, field.parts[index] as Part, closest);
    if (closest.distance === 0) return false;
  }
  return true;
}

/** Diameter (mm) of the widest disc round a point. */
function roomRound(field: WaysField, p: Point, parts: readonly Part[], fresh: readonly number[]): number {
  if (field.isInHollow(p)) return 0;
  let least = Infinity;
  for (const i of fresh) least = Math.min(least, distanceToPart(parts[i] as Part, p.x, p.y));
  const box = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
  for (const i of field.grid.near(box, least)) least = Math.min(least, distanceToPart(parts[i] as Part, p.x, p.y));
  return 2 * least;
}
