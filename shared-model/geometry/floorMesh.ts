import earcut, { refine } from 'earcut';
import { type Polygon, signedArea } from './polygon.ts';
import { type Patch, patchesOf, type Region, regionArea } from './region.ts';
import { distance, type Point, turn } from './vec.ts';

/** Degrees by which the floor is turned before it is cut up, one after the other until the triangles cover all of it and meet corner to corner. */
const TURNS = [0, 17.3, 41.9, 63.1, 78.7, 151.3];
/** mm²: more than this must not be missing, nor be covered twice. */
const MISSING = 50;
/** mm by which the sides at the edge may differ from the edge. */
const UNMATCHED = 1;

/** Floor cut into triangles, corner to corner; each runs clockwise on the plan. */
export interface FloorMesh {
  readonly points: readonly Point[];
  /** Three indices of points for each triangle. */
  readonly corners: Int32Array;
  /** For each of them the triangle across the side that starts there; -1: a wall. */
  readonly across: Int32Array;
  /** By point: the triangles it is a corner of. */
  readonly round: readonly (readonly number[])[];
  /** By point: the floor's angle there is more than a straight one, so walks may bend. */
  readonly bends: readonly boolean[];
  /** By point: its neighbours along the floor's edge, such that the floor there lies clockwise from the first to the second; null: none, or more than two. */
  readonly rims: readonly (readonly [Point, Point] | null)[];
}

/** Null: there is no floor, or it could not be cut up (none is known that cannot). */
export function meshOf(floor: Region): FloorMesh | null {
  const wanted = regionArea(floor);
  if (wanted === 0) return null;
  const edge = floor.reduce((sum, ring) => sum + ringLength(ring), 0);
  const patches = patchesOf(floor);
  for (const angle of TURNS) {
    const triangles = patches.flatMap((patch) => trianglesOf(patch, angle));
    const covered = triangles.reduce((sum, ring) => sum + Math.abs(signedArea(ring)), 0);
    if (Math.abs(covered - wanted) > MISSING) continue;
    const mesh = weld(triangles);
    // Sides that no other triangle shares make up the floor's edge; where there are more, two do not meet corner to corner.
    if (Math.abs(rimLength(mesh) - edge) <= UNMATCHED) return mesh;
  }
  return null;
}

/** Turned before it is cut up: of sides that run level, others are cut first. */
function trianglesOf({ outline, holes }: Patch, angle: number): Point[][] {
  const rings = [outline, ...holes];
  const points = rings.flat();
  const starts: number[] = [];
  let at = outline.length;
  for (const hole of holes) {
    starts.push(at);
    at += hole.length;
  }
  const data = points.flatMap((p) => {
    const { x, y } = turn(p, angle);
    return [x, y];
  });
  const found = earcut(data, starts);
  refine(found, data);
  return Array.from({ length: found.length / 3 }, (_, t) => [0, 1, 2].map((k) => points[found[3 * t + k] as number] as Point));
}

function weld(triangles: readonly (readonly Point[])[]): FloorMesh {
  const points: Point[] = [];
  const byPlace = new Map<string, number>();
  const indexOf = (p: Point): number => {
    const place = `${Math.round(p.x * 500)} ${Math.round(p.y * 500)}`;
    const known = byPlace.get(place);
    if (known !== undefined) return known;
    byPlace.set(place, points.length);
    return points.push(p) - 1;
  };
  const found: number[] = [];
  for (const ring of triangles) {
    const way = signedArea(ring) < 0 ? [...ring].reverse() : ring;
    const [a, b, c] = way.map(indexOf);
    if (a === undefined || b === undefined || c === undefined || a === b || b === c || c === a) continue;
    found.push(a, b, c);
  }
  const corners = Int32Array.from(found);
  const across = new Int32Array(corners.length).fill(-1);
  const round: number[][] = points.map(() => []);
  const angles = new Float64Array(points.length);
  const sides = new Map<number, number>();
  corners.forEach((from, k) => {
    const t = Math.floor(k / 3);
    const to = corners[3 * t + ((k + 1) % 3)] as number;
    const last = corners[3 * t + ((k + 2) % 3)] as number;
    round[from]?.push(t);
    angles[from] = (angles[from] as number) + angleAt(points[from] as Point, points[to] as Point, points[last] as Point);
    const back = sides.get(to * points.length + from);
    if (back === undefined) sides.set(from * points.length + to, k);
    else {
      across[k] = Math.floor(back / 3);
      across[back] = t;
    }
  });
  const rims = rimsOf(points, corners, across);
  return { points, corners, across, round, rims, bends: points.map((_, i) => (angles[i] as number) > Math.PI + 1e-6) };
}

/** mm */
const ringLength = (ring: Polygon): number => ring.reduce((sum, p, i) => sum + distance(p, ring[(i + 1) % ring.length] as Point), 0);

/** mm */
function rimLength({ points, corners, across }: FloorMesh): number {
  let length = 0;
  across.forEach((beyond, k) => {
    if (beyond >= 0) return;
    const to = corners[3 * Math.floor(k / 3) + ((k + 1) % 3)] as number;
    length += distance(points[corners[k] as number] as Point, points[to] as Point);
  });
  return length;
}

function rimsOf(points: readonly Point[], corners: Int32Array, across: Int32Array): (readonly [Point, Point] | null)[] {
  const after = new Int32Array(points.length).fill(-1);
  const before = new Int32Array(points.length).fill(-1);
  const times = new Uint8Array(points.length);
  across.forEach((beyond, k) => {
    if (beyond >= 0) return;
    const from = corners[k] as number;
    const to = corners[3 * Math.floor(k / 3) + ((k + 1) % 3)] as number;
    after[from] = to;
    before[to] = from;
    times[from] = (times[from] as number) + 1;
  });
  return points.map((_, i) => {
    const [x, y] = [points[after[i] as number], points[before[i] as number]];
    return times[i] === 1 && x && y ? [x, y] : null;
  });
}

function angleAt(p: Point, q: Point, r: Point): number {
  const between = Math.atan2(q.y - p.y, q.x - p.x) - Math.atan2(r.y - p.y, r.x - p.x);
  const turned = Math.abs(between) % (2 * Math.PI);
  return turned > Math.PI ? 2 * Math.PI - turned : turned;
}

/** The triangle a point lies in, or on; -1: none. */
export function triangleAt({ points, corners }: FloorMesh, p: Point): number {
  for (let t = 0; 3 * t < corners.length; t++) {
    const a = points[corners[3 * t] as number] as Point;
    const b = points[corners[3 * t + 1] as number] as Point;
    const c = points[corners[3 * t + 2] as number] as Point;
    if (sideOf(a, b, p) >= -1e-9 && sideOf(b, c, p) >= -1e-9 && sideOf(c, a, p) >= -1e-9) return t;
  }
  return -1;
}

/** Positive where p lies to the right of a-b on the plan (y down): inside a ring that runs clockwise. */
const sideOf = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
