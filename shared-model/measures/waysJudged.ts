import type { Gap } from '../geometry/gaps.ts';
import type { IsExempt } from '../geometry/separation.ts';
import { isInStretch, type Stretch } from '../geometry/stretch.ts';
import { StretchIndex } from '../geometry/stretchIndex.ts';
import { type AccessFigures, accessFigures } from './accessFigures.ts';
import { betweenPlaces, type NarrowPlace, placeHolding } from './narrowPlaces.ts';
import { solveAllEach } from './ways.ts';
import type { WaysField } from './waysField.ts';
import type { SolvedWay } from './waysSolve.ts';

/** Places wide and short enough for the exception of 403.5.1 (A02), and which of them stand too near each other. */
export interface Pinches {
  readonly places: readonly NarrowPlace[];
  readonly tooNear: ReadonlyMap<NarrowPlace, ReadonlySet<NarrowPlace>>;
}

export function findPinches(places: readonly NarrowPlace[], figures: AccessFigures): Pinches {
  const noise = 1e-6;
  const pinches = places.filter((p) => p.width >= figures.pinchMeets - noise && p.length <= figures.pinchLength + noise);
  const tooNear = new Map(pinches.map((p) => [p, new Set<NarrowPlace>()]));
  pinches.forEach((p, i) => {
    for (const q of pinches.slice(i + 1)) {
      if (betweenPlaces(p, q) >= figures.betweenPinches - noise) continue;
      tooNear.get(p)?.add(q);
      tooNear.get(q)?.add(p);
    }
  });
  return { places: pinches, tooNear };
}

/**
 * Ways once more, with the pinches of the exception taken as open. Of pinches too near each other only one at a
 * time is open: two side by side each let somebody pass, two in a row do not.
 * @param limit mm, as for `solveAll`
 * @returns for each way that a pinch may hold back, the better answer
 */
export function openPinches(field: WaysField, ways: readonly SolvedWay[], pinches: Pinches, limit?: number): Map<SolvedWay, SolvedWay> {
  const figures = accessFigures(field.scene);
  const better = new Map<SolvedWay, SolvedWay>();
  if (pinches.places.length === 0) return better;
  const held = ways.filter((way) => {
    if (!way.from || way.width >= figures.routeMeets || way.width < figures.pinchMeets - 1e-6) return false;
    // Where a pinch is wider than the door, the door is named.
    return way.bound?.by === 'door' || placeHolding(pinches.places, way.bound) !== undefined;
  });
  if (held.length === 0) return better;
  const targets = held.map((way) => way.target);
  const from = figures.pinchMeets - 1e-6;
  const placesOf = placesByGap(pinches.places, figures);
  const each = sets(pinches).map((open): IsExempt => {
    const isOpen = new Set(open);
    return (gap) => placesOf(gap).some((place) => isOpen.has(place));
  });
  for (const solved of solveAllEach(field, targets, { each, from }, { limit })) {
    held.forEach((way, i) => {
      const now = solved[i] as SolvedWay;
      const best = better.get(way) ?? way;
      if (now.width > best.width + 1e-6 || (now.width >= best.width - 1e-6 && now.share > best.share)) better.set(way, now);
    });
  }
  return better;
}

const none: readonly NarrowPlace[] = [];

/** The pinches that a gap lies in; looked for once a gap. */
function placesByGap(places: readonly NarrowPlace[], { pinchMeets, routeMeets }: AccessFigures): (gap: Gap) => readonly NarrowPlace[] {
  const known = new Map<Gap, readonly NarrowPlace[]>();
  const index = new StretchIndex(routeMeets);
  const placeOf = new Map<Stretch, NarrowPlace>();
  for (const place of places)
    for (const stretch of place.stretches) {
      index.add(stretch);
      placeOf.set(stretch, place);
    }
  return (gap) => {
    if (gap.width < pinchMeets - 1e-6 || gap.width >= routeMeets) return [];
    const before = known.get(gap);
    if (before) return before;
    const found = new Set<NarrowPlace>();
    for (const stretch of index.near(gap)) if (isInStretch(stretch, gap)) found.add(placeOf.get(stretch) as NarrowPlace);
    const list = found.size === 0 ? none : [...found];
    known.set(gap, list);
    return list;
  };
}

/** Sets of pinches no two of which stand too near, each as large as it can be, covering every pinch. */
function sets({ places, tooNear }: Pinches): NarrowPlace[][] {
  const made: NarrowPlace[][] = [];
  const covered = new Set<NarrowPlace>();
  for (const first of places) {
    if (covered.has(first)) continue;
    const set = [first];
    for (const place of places) if (place !== first && !set.some((other) => tooNear.get(place)?.has(other))) set.push(place);
    for (const place of set) covered.add(place);
    made.push(set);
  }
  return made;
}
