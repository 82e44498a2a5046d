import type { Gap } from '../geometry/gaps.ts';
import type { Part } from '../geometry/parts.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { isInPatch, type Patch, patchesOf, type Region, without } from '../geometry/region.ts';
import { add, dot, lerp, type Point, scale, sub, unit } from '../geometry/vec.ts';
import type { Scene, SceneOpening } from '../scene/types.ts';
import { seatStrips } from './seats.ts';
import type { Chairs } from './targets.ts';
import { WaysField } from './waysField.ts';

/** mm: whoever walks is taken this wide: a child, or an adult who turns sideways */
const WALKER = 300;
/** mm: half the thickness of what shuts a gap, and how far it runs into both sides */
const BAR = 0.5;
/** mm: corners this near to the gap's edge are on it */
const ON_EDGE = 2;

/** mm inside the wall's line where a doorway is walked through */
const AT_LINE = 0.004;
/** Where along its clear opening a doorway is walked through: the middle, else the nearest of these that is free. */
const SHARES = [0.5, 0.4, 0.6, 0.25, 0.75, 0.1, 0.9];

/**
 * Floor for a round body (diameter mm): within the walls, clear of furniture and of children who sit, with every gap that is
 * narrower shut and the slit between two faces that run alike filled. What a body gets to is then what hangs together;
 * beside a gap that is shut in one place the floor itself stays, though its middle may not come quite so near.
 */
export function walkFloor(scene: Scene, body = WALKER, chairs: Chairs = 'pushed in'): Region {
  const field = WaysField.of(scene, chairs);
  const standing = scene.bodies.filter((one) => one.isObstacle).map((one) => one.footprint);
  if (chairs === 'in use') standing.push(...seatStrips(scene).map(({ strip }) => strip));
  const bars = field.gaps(body - 1e-6).flatMap((gap) => bar(field.parts, gap));
  return without([scene.room.outline], [...standing, ...bars]);
}

/** What of that floor hangs together with a door or passage; the doors' own width is left out. */
export function enteredFloor(scene: Scene, body: number, chairs: Chairs = 'pushed in'): Patch[] {
  const entries = scene.room.openings.filter((opening) => opening.isWayIn).flatMap(placesInDoor);
  return patchesOf(walkFloor(scene, body, chairs)).filter((patch) => entries.some((p) => isInPatch(patch, p)));
}

/** Just inside a door's clear opening: the middle first. */
export const placesInDoor = ({ clearA, clearB, wall }: SceneOpening): Point[] =>
  SHARES.map((share) => add(lerp(clearA, clearB, share), scale(wall.inward, AT_LINE)));

function bar(parts: readonly Part[], gap: Gap): Polygon[] {
  const one = parts[gap.i] as Part;
  const other = parts[gap.j] as Part;
  const isOwnCorner = one.id === other.id || (one.id.startsWith('wall:') && other.id.startsWith('wall:'));
  if (gap.width === 0 && isOwnCorner) return [];
  const a = { x: gap.ax, y: gap.ay };
  const b = { x: gap.bx, y: gap.by };
  const across = gap.width > 1e-6 ? unit(sub(b, a)) : { x: 1, y: 0 };
  const along = { x: -across.y, y: across.x };
  const [from, to] = gap.width > 1e-6 ? overlap(faceOf(one, a, across, along), faceOf(other, b, scale(across, -1), along)) : [0, 0];
  const isSlit = to - from > 1;
  const [start, end] = isSlit ? [from, to] : [-BAR, BAR];
  const place = (p: Point, u: number, v: number): Point => add(p, add(scale(along, u), scale(across, v)));
  return [[place(a, start, -BAR), place(b, start, BAR), place(b, end, BAR), place(a, end, -BAR)]];
}

/** How far the face at a gap's end runs to both sides of it. */
function faceOf(part: Part, end: Point, outward: Point, along: Point): readonly [number, number] {
  const us = part.ring.filter((p) => dot(sub(p, end), outward) >= -ON_EDGE).map((p) => dot(sub(p, end), along));
  return us.length === 0 ? [0, 0] : [Math.min(...us), Math.max(...us)];
}

const overlap = (p: readonly [number, number], q: readonly [number, number]): readonly [number, number] => [
  Math.max(p[0], q[0]),
  Math.min(p[1], q[1]),
];
