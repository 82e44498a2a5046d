import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import { eachBoxPair } from './boxPairs.ts';
import { area, type Box, boundingBox, clockwise, contains, edges, isConvex, type Polygon, segmentsMeet } from './polygon.ts';
import { PRECISION, trimmedRings } from './trimmedRings.ts';
import { cross, type Point, sub } from './vec.ts';

/** Area (mm²) of the union of rings within a room; nothing is counted twice. Exact for rings, to 1e-3 mm in their corners. */
export function coveredArea(rings: readonly Polygon[], room: Polygon): number {
  if (rings.length === 0) return 0;
  // Near the origin the whole numbers that the library works in stay small.
  const { minX, minY } = boundingBox(room);
  const paths = (list: readonly Polygon[]) => trimmedRings(list.map(clockwise), { x: minX, y: minY });
  return Math.abs(areaPathsD(intersectD(paths(rings), paths([room]), FillRule.NonZero, PRECISION)));
}

/** Area (mm²) of one ring within a room; without rounding where the ring lies inside. */
export function areaWithin(ring: Polygon, room: Polygon): number {
  return liesWithin(ring, room) ? area(ring) : coveredArea([ring], room);
}

function liesWithin(ring: Polygon, room: Polygon): boolean {
  if (!isConvex(room)) {
    if (!ring.every((p) => contains(room, p))) return false;
    const walls = edges(room);
    return edges(ring).every((edge) => walls.every((wall) => !segmentsMeet(edge, wall)));
  }
  return clockwise(room).every((a, i, all) => {
    const b = all[(i + 1) % all.length] as Point;
    const wall = sub(b, a);
    const slack = 1e-6 * Math.hypot(wall.x, wall.y);
    return ring.every((p) => cross(wall, sub(p, a)) >= -slack);
  });
}

/** Area (mm²) that each ring adds within the room to the ones before it: they sum to the area of the union. */
export function addedAreas(rings: readonly Polygon[], room: Polygon, own: readonly number[]): number[] {
  const boxes = rings.map(boundingBox);
  const overlapped = new Map<number, number[]>();
  eachBoxPair(boxes, (j, i) => {
    if (!boxesOverlap(boxes[i] as Box, boxes[j] as Box)) return;
    overlapped.set(i, [...(overlapped.get(i) ?? []), j]);
  });
  return rings.map((ring, i) => {
    const indices = overlapped.get(i);
    if (!indices) return own[i] ?? areaWithin(ring, room);
    const before = indices.sort((j, k) => j - k).map((j) => rings[j] as Polygon);
    return Math.max(0, coveredArea([ring, ...before], room) - coveredArea(before, room));
  });
}

/** Boxes that share more than an edge. */
function boxesOverlap(a: Box, b: Box): boolean {
  const slack = 1e-6;
  return a.minX < b.maxX - slack && b.minX < a.maxX - slack && a.minY < b.maxY - slack && b.minY < a.maxY - slack;
}
