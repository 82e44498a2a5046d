import { differenceD, FillRule, intersectD, unionD } from 'clipper2-ts';
import { boxGroups } from './boxPairs.ts';
import { area, boundingBox, boxesMeet, contains, edges, grownBox, type Polygon, signedArea } from './polygon.ts';
import { SideLines } from './sideLines.ts';
import { PRECISION, trimmedRings } from './trimmedRings.ts';
import type { Point } from './vec.ts';

/** Floor as rings: outlines run clockwise on the plan, holes the other way, and none of them cross. */
export type Region = readonly Polygon[];

const solid = (ring: Polygon): Polygon => (signedArea(ring) < 0 ? [...ring].reverse() : ring);

/** Rings taken away at once: thousands that cross one another would keep the library busy for minutes. */
const AT_ONCE = 256;

/** What of a region lies in none of the rings (each taken as solid, whichever way it runs). Corners to 1e-3 mm. */
export function without(region: Region, rings: readonly Polygon[]): Region {
  let left = region;
  for (let from = 0; from < rings.length && left.length > 0; from += AT_ONCE) {
    const taken = trimmedRings(rings.slice(from, from + AT_ONCE).map(solid));
    left = differenceD(trimmedRings(left), taken, FillRule.NonZero, PRECISION);
  }
  return left;
}

/** What of a region lies in no other region. */
export const minus = (region: Region, other: Region): Region =>
  other.length === 0 ? region : differenceD(trimmedRings(region), trimmedRings(other), FillRule.NonZero, PRECISION);

export const shared = (one: Region, other: Region): Region =>
  one.length === 0 || other.length === 0 ? [] : intersectD(trimmedRings(one), trimmedRings(other), FillRule.NonZero, PRECISION);

/** What of a region lies in any of the rings (each taken as solid, whichever way it runs). */
export const inside = (region: Region, rings: readonly Polygon[]): Region =>
  groupsOf(region, rings).flatMap(([part, over]) => {
    let found: Region = [];
    for (let from = 0; from < over.length; from += AT_ONCE) found = joined(found, insideOnce(part, over.slice(from, from + AT_ONCE)));
    return found;
  });

/**
 * Of many rings that lie over one another the library leaves out a corner now and then (in about one of 500 rooms with two
 * eyes): then a side of what it found runs where no side of theirs does, and it is asked in another way.
 */
function insideOnce(region: Region, rings: readonly Polygon[]): Region {
  const lines = new SideLines([...region, ...rings]);
  const found = shared(region, rings);
  if (lines.hold(found)) return found;
  const other = minus(region, without(region, rings));
  if (lines.hold(other)) return other;
  return shared(region, oneByOne(rings));
}

const oneByOne = (rings: readonly Polygon[]): Region => rings.reduce((all: Region, ring) => joined(all, [ring]), []);

/** What lies in any of some rings (each taken as solid, whichever way it runs). */
export const united = (rings: readonly Polygon[]): Region =>
  groupsOf(rings.map(solid), []).flatMap(([part]) => {
    if (part.length === 1) return part;
    let all: Region = [];
    for (let from = 0; from < part.length; from += AT_ONCE) all = joined(all, unitedOnce(part.slice(from, from + AT_ONCE)));
    return all;
  });

function unitedOnce(rings: readonly Polygon[]): Region {
  const found = unionD(trimmedRings(rings), [], FillRule.NonZero, PRECISION);
  return new SideLines(rings).hold(found) ? found : oneByOne(rings);
}

/** What of a region lies within an outline and in none of some rings (each taken as solid, whichever way it runs). */
export function within(region: Region, outline: Polygon, rings: readonly Polygon[]): Region {
  const walls = edges(outline).map(({ a, b }) => boundingBox([a, b]));
  return groupsOf(region, rings).flatMap(([part, off]) => {
    const box = grownBox(boundingBox(part.flat()), APART);
    const isAtWall = walls.some((wall) => boxesMeet(wall, box));
    if (!isAtWall) return contains(outline, part[0]?.[0] as Point) ? without(part, off) : [];
    return without(shared(part, [outline]), off);
  });
}

/** mm round a ring's box: rounding moves no corner so far. */
const APART = 0.01;

/** What of a region and of rings (solid) can meet, apart from the rest: far less for the library than all at once. */
function groupsOf(region: Region, rings: readonly Polygon[]): [Region, Polygon[]][] {
  const boxes = [...region, ...rings].map((ring) => grownBox(boundingBox(ring), APART));
  return boxGroups(boxes)
    .map((group): [Region, Polygon[]] => [
      group.filter((i) => i < region.length).map((i) => region[i] as Polygon),
      group.filter((i) => i >= region.length).map((i) => solid(rings[i - region.length] as Polygon)),
    ])
    .filter(([part]) => part.length > 0);
}

/** What lies in one region or the other. */
export const joined = (one: Region, other: Region): Region =>
  one.length === 0 ? other : other.length === 0 ? one : unionD(trimmedRings(one), trimmedRings(other), FillRule.NonZero, PRECISION);

/** mm² */
export const regionArea = (region: Region): number => Math.abs(region.reduce((sum, ring) => sum + signedArea(ring), 0));

/** A piece of a region that hangs together. */
export interface Patch {
  readonly outline: Polygon;
  readonly holes: readonly Polygon[];
  /** mm² */
  readonly area: number;
}

/** The pieces of a region, the largest first. */
export function patchesOf(region: Region): Patch[] {
  const outlines = region.filter((ring) => signedArea(ring) > 0).sort((p, q) => area(p) - area(q));
  const holes = new Map<Polygon, Polygon[]>(outlines.map((outline) => [outline, []]));
  for (const ring of region) {
    if (signedArea(ring) >= 0) continue;
    const outline = outlines.find((one) => area(one) > area(ring) && liesIn(ring, one));
    if (outline) holes.get(outline)?.push(ring);
  }
  const patch = (outline: Polygon): Patch => {
    const inner = holes.get(outline) ?? [];
    return { outline, holes: inner, area: area(outline) - inner.reduce((sum, hole) => sum + area(hole), 0) };
  };
  return outlines.map(patch).sort((p, q) => q.area - p.area);
}

/** Corners of a hole may touch its outline: most of the middles of its sides tell. */
function liesIn(hole: Polygon, outline: Polygon): boolean {
  const inside = hole.filter((p, i) => {
    const q = hole[(i + 1) % hole.length] as Point;
    return contains(outline, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  });
  return inside.length * 2 > hole.length;
}

export const isInPatch = ({ outline, holes }: Patch, p: Point): boolean => contains(outline, p) && !holes.some((hole) => contains(hole, p));

/** A point well within a patch: the middle of the longest stretch along a few lines through it. */
export function pointInside({ outline, holes }: Patch): Point {
  let low = Infinity;
  let high = -Infinity;
  for (const { y } of outline) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  let x = outline[0]?.x as number;
  let at = outline[0]?.y as number;
  let longest = -1;
  const xs: number[] = [];
  for (let k = 1; k < 8; k++) {
    const y = low + ((high - low) * (k + 1e-3)) / 8;
    xs.length = 0;
    addCrossings(outline, y, xs);
    for (const hole of holes) addCrossings(hole, y, xs);
    if (xs.length > 2) xs.sort((p, q) => p - q);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const [p, q] = [xs[i] as number, xs[i + 1] as number];
      if (Math.abs(q - p) <= longest) continue;
      longest = Math.abs(q - p);
      x = (p + q) / 2;
      at = y;
    }
  }
  return { x, y: at };
}

function addCrossings(ring: Polygon, y: number, to: number[]): void {
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Point;
    const b = ring[i + 1 === ring.length ? 0 : i + 1] as Point;
    if (a.y > y !== b.y > y) to.push(a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y));
  }
}
