import { eachBoxPair } from '../geometry/boxPairs.ts';
import type { Gap } from '../geometry/gaps.ts';
import { distanceToPart, type Part } from '../geometry/parts.ts';
import { type Box, grownBox } from '../geometry/polygon.ts';
import {
  betweenEnds,
  cornerBox,
  isInStretch,
  middleOfEnd,
  SAME_CORNER,
  type Stretch,
  type StretchEnd,
  stretchAt,
} from '../geometry/stretch.ts';
import { StretchIndex } from '../geometry/stretchIndex.ts';
import { distance, type Point } from '../geometry/vec.ts';
import { keptWith } from '../scene/kept.ts';
import { boundEnds } from './boundEnds.ts';
import { localValues } from './fieldLocals.ts';
import { farthest, type WaysField } from './waysField.ts';
import type { Bound } from './waysFronts.ts';

/** A place narrower than the route: one stretch, or several chained round corners. */
export interface NarrowPlace {
  /** The narrowest gap of it. */
  readonly gap: Gap;
  /** Ids of both sides. */
  readonly between: readonly [string, string];
  /** mm */
  readonly width: number;
  /** mm along the travel, round corners too */
  readonly length: number;
  readonly at: Point;
  readonly stretches: readonly Stretch[];
  /** The same stretches one by one, each with its own narrowest gap. */
  readonly members: readonly NarrowMember[];
}

/** One stretch of a place. mm. */
export interface NarrowMember {
  readonly gap: Gap;
  readonly between: readonly [string, string];
  readonly width: number;
  readonly length: number;
  readonly at: Point;
  readonly stretch: Stretch;
}

/** mm: edges nearer than this touch; there is no way between them to speak of. */
const TOUCHING = 1;
/** mm: how far a stretch is followed at first. */
const FIRST_REACH = 700;
/**
 * Every place narrower than `threshold` mm with floor between, narrowest first: openings shut, and the narrow
 * places of `bounds` at open doors beside.
 */
export function narrowPlaces(field: WaysField, threshold: number, bounds: readonly Bound[] = []): NarrowPlace[] {
  const single: { gap: Gap; parts: readonly Part[]; stretch: Stretch }[] = [];
  const index = new StretchIndex(threshold);
  const add = (gap: Gap, parts: readonly Part[]): void => {
    if (gap.width <= TOUCHING || gap.width >= threshold) return;
    if (index.near(gap).some((known) => isInStretch(known, gap))) return;
    const stretch = parts === field.parts ? keptStretch(field, gap, threshold) : stretchOf(field, gap, parts, threshold).stretch;
    if (!stretch) return;
    single.push({ gap, parts, stretch });
    index.add(stretch);
  };
  for (const gap of field.gaps(threshold)) add(gap, field.parts);
  for (const bound of bounds) if (bound.by === 'gap' && bound.parts !== field.parts) add(bound.gap, bound.parts);
  return chains(single.map((s) => s.stretch)).map((members): NarrowPlace => {
    const all = members.map((i) => single[i] as (typeof single)[number]).sort((p, q) => p.gap.width - q.gap.width);
    const { gap } = all[0] as (typeof single)[number];
    const ends = all.map(({ gap, parts, stretch }) => memberOf(gap, parts, stretch));
    const first = ends[0] as NarrowMember;
    if (ends.length === 1) return placeOfOne(first);
    const { between, width, at } = first;
    const stretches = all.map((s) => s.stretch);
    return { gap, between, width, length: chainLength(stretches), at, stretches, members: ends };
  });
}

const memberAlong = new WeakMap<Stretch, NarrowMember>();

/** The same object at each step of a drag, as long as the gap and its stretch are the same. */
function memberOf(gap: Gap, parts: readonly Part[], stretch: Stretch): NarrowMember {
  const { i, j, width, ax, ay, bx, by } = gap;
  const [one, other] = [(parts[i] as Part).id, (parts[j] as Part).id];
  const known = memberAlong.get(stretch);
  if (known?.gap === gap && known.between[0] === one && known.between[1] === other) return known;
  const at = { x: (ax + bx) / 2, y: (ay + by) / 2 };
  const member: NarrowMember = { gap, between: [one, other], width, length: stretch.length, at, stretch };
  memberAlong.set(stretch, member);
  return member;
}

const placeOfOne = keptWith((member: NarrowMember): NarrowPlace => {
  const { gap, between, width, length, at, stretch } = member;
  return { gap, between, width, length, at, stretches: [stretch], members: [member] };
});

const stretches = localValues<Gap, Stretch | null>(true);

function keptStretch(field: WaysField, gap: Gap, threshold: number): Stretch | null {
  const known = stretches(field, threshold);
  const before = known.get(gap);
  if (before !== undefined) return before;
  const { stretch, box } = stretchOf(field, gap, field.parts, threshold);
  return known.set(gap, stretch, box);
}

/** Used again for each gap. */
const around: number[] = [];
const nearby: Part[] = [];

/** The stretch of a gap with floor between, else null; and the box of all that was looked at. */
function stretchOf(field: WaysField, gap: Gap, parts: readonly Part[], threshold: number): { stretch: Stretch | null; box: Box } {
  const discBox = grownBox(middleBox(gap), gap.width / 2);
  if (!isClear(field, gap, parts)) return { stretch: null, box: discBox };
  for (let reach = FIRST_REACH; ; reach *= 3) {
    const along = boxAlong(gap, reach, threshold);
    around.length = 0;
    field.grid.collect(along, 0, around);
    nearby.length = 0;
    for (const i of around) nearby.push(parts[i] as Part);
    for (let i = field.parts.length; i < parts.length; i++) nearby.push(parts[i] as Part);
    const stretch = stretchAt(gap, nearby, threshold, reach);
    const isEnded = stretch.ahead.offset < reach && -stretch.back.offset < reach;
    if (isEnded || reach > 2 * farthest(field.scene)) return { stretch, box: boxAround(discBox, along) };
  }
}

/** The disc on the gap as diameter is empty, and its middle is floor. */
function isClear(field: WaysField, gap: Gap, parts: readonly Part[]): boolean {
  const box = middleBox(gap);
  const { minX: x, minY: y } = box;
  const radius = gap.width / 2 - 1e-6;
  around.length = 0;
  field.grid.collect(box, radius, around);
  for (let k = 0; k < around.length; k++) {
    const index = around[k] as number;
    if (index === gap.i || index === gap.j) continue;
    if (distanceToPart(parts[index] as Part, x, y) <= radius) return false;
  }
  return field.isFloor({ x, y });
}

function middleBox({ ax, ay, bx, by }: Gap): Box {
  const x = (ax + bx) / 2;
  const y = (ay + by) / 2;
  return { minX: x, minY: y, maxX: x, maxY: y };
}

const boxAround = (p: Box, q: Box): Box => ({
  minX: Math.min(p.minX, q.minX),
  minY: Math.min(p.minY, q.minY),
  maxX: Math.max(p.maxX, q.maxX),
  maxY: Math.max(p.maxY, q.maxY),
});

/** The box of all that lies within `reach` mm along the travel through a gap and `threshold` mm across it. */
function boxAlong({ ax, ay, bx, by, width }: Gap, reach: number, threshold: number): Box {
  const acrossX = Math.abs(bx - ax) / width;
  const acrossY = Math.abs(by - ay) / width;
  const x = (ax + bx) / 2;
  const y = (ay + by) / 2;
  const halfX = acrossY * reach + acrossX * threshold;
  const halfY = acrossX * reach + acrossY * threshold;
  return { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY };
}

/** Groups of stretches that meet at a corner. */
function chains(stretches: readonly Stretch[]): number[][] {
  const group = stretches.map((_, i) => i);
  const rootOf = (i: number): number => (group[i] === i ? i : rootOf(group[i] as number));
  const ends: StretchEnd[] = [];
  const owners: number[] = [];
  const boxes: Box[] = [];
  stretches.forEach(({ back, ahead }, i) => {
    for (const end of [back, ahead]) {
      if (!end.isOpen) continue;
      ends.push(end);
      owners.push(i);
      boxes.push(cornerBox(end));
    }
  });
  eachBoxPair(boxes, (p, q) => {
    const one = owners[p] as number;
    const other = owners[q] as number;
    if (one !== other && betweenEnds(ends[p] as StretchEnd, ends[q] as StretchEnd) <= SAME_CORNER) group[rootOf(other)] = rootOf(one);
  });
  const byRoot = new Map<number, number[]>();
  for (const i of stretches.keys()) {
    const root = rootOf(i);
    const members = byRoot.get(root);
    if (members) members.push(i);
    else byRoot.set(root, [i]);
  }
  return [...byRoot.values()];
}

const endsOf = (stretch: Stretch): StretchEnd[] => [stretch.back, stretch.ahead];

const meetAtCorner = (p: Stretch, q: Stretch): boolean =>
  endsOf(p).some((e) => endsOf(q).some((f) => e.isOpen && f.isOpen && betweenEnds(e, f) <= SAME_CORNER));

/** Along each stretch, and from one to the next between the middles of the ends that meet. */
function chainLength(stretches: readonly Stretch[]): number {
  if (stretches.length === 1) return (stretches[0] as Stretch).length;
  let total = stretches.reduce((sum, s) => sum + s.length, 0);
  stretches.forEach((p, i) => {
    for (const q of stretches.slice(i + 1)) {
      if (!meetAtCorner(p, q)) continue;
      const between = endsOf(p).flatMap((e) => endsOf(q).map((f) => (betweenEnds(e, f) <= SAME_CORNER ? apart(e, f) : Infinity)));
      total += Math.min(...between);
    }
  });
  return total;
}

const apart = (e: StretchEnd, f: StretchEnd): number => distance(middleOfEnd(e), middleOfEnd(f));

/** mm between the nearest ends of two places. */
export function betweenPlaces(p: NarrowPlace, q: NarrowPlace): number {
  let least = Infinity;
  for (const s of p.stretches)
    for (const t of q.stretches) for (const e of endsOf(s)) for (const f of endsOf(t)) least = Math.min(least, betweenEnds(e, f));
  return least;
}

/** The place that holds a way to its width, or undefined. */
export function placeHolding(places: readonly NarrowPlace[], bound: Bound | null): NarrowPlace | undefined {
  const gap = gapOf(bound);
  return gap && places.find((place) => memberAt(place, gap));
}

/** The same for many bounds, none of them wider than `widest` mm. */
export function placeFinder(places: readonly NarrowPlace[], widest: number): (bound: Bound | null) => NarrowPlace | undefined {
  const index = new StretchIndex(widest);
  const placeOf = new Map<Stretch, number>();
  for (const [i, { members }] of places.entries()) {
    for (const { stretch } of members) {
      index.add(stretch);
      placeOf.set(stretch, i);
    }
  }
  return (bound) => {
    const gap = gapOf(bound);
    let first = Infinity;
    if (gap)
      for (const stretch of index.near(gap)) if (isInStretch(stretch, gap)) first = Math.min(first, placeOf.get(stretch) ?? Infinity);
    return places[first];
  };
}

/** The stretch of a place that holds a way to its width, or undefined. */
export function memberHolding(place: NarrowPlace, bound: Bound | null): NarrowMember | undefined {
  const gap = gapOf(bound);
  return gap && memberAt(place, gap);
}

const memberAt = (place: NarrowPlace, gap: Gap): NarrowMember | undefined =>
  place.members.find((member) => isInStretch(member.stretch, gap));

function gapOf(bound: Bound | null): Gap | undefined {
  if (!bound || bound.by === 'door') return undefined;
  if (bound.by === 'gap') return bound.gap;
  const [p, q] = boundEnds(bound);
  return p && q && { i: -1, j: -1, width: distance(p, q), ax: p.x, ay: p.y, bx: q.x, by: q.y };
}
