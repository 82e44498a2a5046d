import { type Closest, closestOfParts } from '../geometry/closest.ts';
import type { FrontLine } from '../geometry/frontLine.ts';
import { lengthOf, pointBefore } from '../geometry/frontLine.ts';
import type { Gap } from '../geometry/gaps.ts';
import { distanceToPart, makePart, type Part } from '../geometry/parts.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { separate } from '../geometry/separation.ts';
import { type WalkEnd, Walker } from '../geometry/shortestWalk.ts';
import { freeStretches, type TangentDisc, viewFront } from '../geometry/tangentDiscs.ts';
import { distance, lerp, type Point } from '../geometry/vec.ts';
import type { Scene, SceneOpening } from '../scene/types.ts';
import { boundEnds, type WayEnd } from './boundEnds.ts';
import { seatStrips } from './seats.ts';
import { doorLine, edgeLine, freeEdges, type Target } from './targets.ts';
import { solveAll } from './ways.ts';
import { partsWithDoorsOpen } from './waysDoor.ts';
import { farthest, WaysField } from './waysField.ts';
import { lookAtFronts } from './waysFronts.ts';

/** An end of a way: a place on the plan (mm), or the id of a door, a passage, a piece or a fixture (its front). */
export type WayStop = Point | string;

/** How wide a disc can travel between two ends, and how far a body walks. mm. */
export interface WayBetween {
  /** 0: no way at all */
  readonly width: number;
  /** The narrowest place; null when there is no way. */
  readonly at: Point | null;
  /** What stands on both sides of it. */
  readonly between: readonly WayEnd[];
  /** mm of the shortest walk of the body; null: it cannot get there, or was not asked for */
  readonly walk: number | null;
}

export type WayBetweenAnswer =
  | ({ readonly isTold: true } & WayBetween)
  /** 'walls': the walls do not hold. Otherwise that end names nothing in this arrangement. */
  | { readonly isTold: false; readonly why: 'walls' | 'from' | 'to' };

type Stop =
  | { readonly kind: 'place'; readonly place: Point }
  | { readonly kind: 'front'; readonly target: Target }
  | { readonly kind: 'door'; readonly opening: SceneOpening; readonly target: Target };

/**
 * The way between two ends. A disc stands with its centre on a place, touches a front, and starts from a door as the
 * ways of the report do. A walking body (diameter mm) stands with its centre on a place or anywhere on a door's
 * clear opening, or touches a front from before it; `body: null` asks for the width alone, which is far sooner told. Never throws.
 */
export function wayBetween(
  scene: Scene,
  from: WayStop,
  to: WayStop,
  { body = 0 }: { readonly body?: number | null } = {},
): WayBetweenAnswer {
  const start = resolveStop(scene, from);
  if (!start) return { isTold: false, why: 'from' };
  const goal = resolveStop(scene, to);
  if (!goal) return { isTold: false, why: 'to' };
  if (!scene.room.isSound) return { isTold: false, why: 'walls' };
  const field = WaysField.of(scene);
  return { isTold: true, ...widest(field, start, goal), walk: body === null ? null : shortest(field, start, goal, body) };
}

function resolveStop(scene: Scene, stop: WayStop): Stop | null {
  if (typeof stop !== 'string') return { kind: 'place', place: stop };
  const opening = scene.room.openings.find((o) => o.id === stop && o.isWayIn);
  if (opening) {
    const target = { id: stop, kind: 'door', side: null, label: stop, lines: [doorLine(opening)], body: null, opening } as const;
    return { kind: 'door', opening, target };
  }
  const body = scene.bodyById.get(stop);
  if (!body) return null;
  const isSeated = seatStrips(scene).some((strip) => strip.table === body && strip.side === 'front');
  const lines = isSeated ? freeEdges(body.edges.front) : [edgeLine(body.edges.front)];
  return { kind: 'front', target: { id: stop, kind: 'fixture', side: 'front', label: stop, lines, body, opening: null } };
}

type Width = Pick<WayBetween, 'width' | 'at' | 'between'>;
const NO_WAY: Width = { width: 0, at: null, between: [] };

function widest(field: WaysField, start: Stop, goal: Stop): Width {
  const [door, other] = start.kind === 'door' ? [start, goal] : [goal, start];
  if (door.kind === 'door' && other.kind !== 'place') return fromDoor(field, door.opening, other.target);
  // No wider than the disc that stands on a place: gaps beyond it need not be known.
  const most = Math.min(mostAt(field, start), mostAt(field, goal));
  for (let limit = Math.min(1600, most); ; limit *= 3) {
    const sources = discsOf(field, start, limit);
    const goals = discsOf(field, goal, limit);
    const best = bestPair(field, sources, goals, limit);
    if (best.width < limit - 1e-6 || limit >= Math.min(most, 2 * farthest(field.scene))) return best;
  }
}

/** mm, no disc of a stop is wider; Infinity: not known. */
const mostAt = (field: WaysField, stop: Stop): number =>
  stop.kind === 'place' ? Math.max(0, ...discAtPlace(field, stop.place).map(({ disc }) => disc.diameter)) + 1 : Infinity;

/** From one door, its own width left out, as the ways of the report. */
function fromDoor(field: WaysField, opening: SceneOpening, target: Target): Width {
  const [way] = solveAll(field, [target], { from: [opening] });
  if (!way || way.width === 0 || !way.bound) return NO_WAY;
  const between = boundEnds(way.bound);
  const [p, q] = between;
  return { width: way.width, at: p && q ? lerp(p, q, 0.5) : null, between };
}

/** Discs a way may start or end with, and what holds each to its size. */
interface EndDisc {
  readonly disc: TangentDisc;
  readonly ends: () => readonly WayEnd[];
}

function discsOf(field: WaysField, stop: Stop, limit: number): EndDisc[] {
  if (stop.kind === 'place') return discAtPlace(field, stop.place);
  const { tangents } = lookAtFronts(field, [stop.target], limit);
  return tangents.map(({ disc, line }) => {
    const id = stop.target.opening?.wall.id ?? stop.target.id;
    return { disc, ends: () => boundEnds({ by: 'touch', line: stop.target.lines[line] as FrontLine, disc, id, parts: field.parts }) };
  });
}

function discAtPlace(field: WaysField, place: Point): EndDisc[] {
  if (!field.isFloor(place)) return [];
  const center = makePart('', [place]);
  const closest: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  let least = Infinity;
  let nearest: WayEnd = { id: '', ...place };
  for (const part of field.parts) {
    closestOfParts(center, part, closest);
    if (closest.distance >= least) continue;
    least = closest.distance;
    nearest = { id: part.id, x: closest.bx, y: closest.by };
  }
  return [{ disc: { u: 0, diameter: 2 * least, center: place }, ends: () => [nearest] }];
}

function bestPair(field: WaysField, sources: readonly EndDisc[], goals: readonly EndDisc[], limit: number): Width {
  const points = [...sources, ...goals].map((end) => end.disc.center);
  const cuts = separate(field.parts, field.gaps(limit), points, Array.from(sources.keys()));
  let best = NO_WAY;
  for (const [s, source] of sources.entries()) {
    for (const [g, goal] of goals.entries()) {
      const gap = cuts[s]?.[sources.length + g] ?? null;
      const narrower = source.disc.diameter < goal.disc.diameter ? source : goal;
      const width = Math.min(gap?.width ?? Infinity, narrower.disc.diameter);
      if (width <= best.width + 1e-9) continue;
      const between = gap && gap.width <= width + 1e-9 ? gapEnds(gap, field.parts) : narrower.ends();
      const [p, q] = between;
      best = { width, at: p && q ? lerp(p, q, 0.5) : narrower.disc.center, between };
    }
  }
  return best;
}

const gapEnds = (gap: Gap, parts: readonly Part[]): readonly WayEnd[] => boundEnds({ by: 'gap', gap, parts });

function shortest(field: WaysField, start: Stop, goal: Stop, body: number): number | null {
  const radius = Math.max(body / 2, 1e-4);
  const doors = [start, goal].flatMap((stop) => (stop.kind === 'door' ? [stop.opening] : []));
  // Ends stand a hair clear of what they touch, so that a walk can turn round a corner right beside one.
  const clear = radius + Math.min(1e-5, radius / 20);
  const parts = partsWithDoorsOpen(field, doors, clear);
  const from = walkEnd(field, parts, start, clear);
  const to = walkEnd(field, parts, goal, clear);
  return new Walker(parts, 2 * radius).walk(from, to);
}

function walkEnd(field: WaysField, parts: readonly Part[], stop: Stop, radius: number): WalkEnd {
  if (stop.kind === 'place') return { places: hasRoom(field, parts, stop.place, radius) ? [stop.place] : [], segments: [] };
  const segments = stop.target.lines.flatMap((line) => standings(field, parts, line, stop.kind === 'door' ? 0 : radius, radius));
  return { places: segments.flatMap(({ a, b }) => [a, b]), segments };
}

/** Where the body's centre stands `before` mm before a line: free stretches of it. */
function standings(field: WaysField, parts: readonly Part[], line: FrontLine, before: number, radius: number) {
  // Discs touching a line a radius behind the centres' own line.
  const behind = { a: pointBefore(line, 0, before - radius), b: pointBefore(line, lengthOf(line), before - radius), outward: line.outward };
  const box = boundingBox([line.a, line.b]);
  const reach = 3 * radius;
  const near = parts.filter(
    (p) => p.minX <= box.maxX + reach && p.maxX >= box.minX - reach && p.minY <= box.maxY + reach && p.maxY >= box.minY - reach,
  );
  const own = before === 0 ? near.filter((p) => !liesOn(p, behind)) : near;
  const view = viewFront(behind, own, 2 * radius, () => true);
  return freeStretches(view, 2 * radius)
    .filter(([from, to]) => before === 0 || field.isOpenFloor(pointBefore(line, (from + to) / 2, 1e-3)))
    .map(([from, to]) => ({ a: pointBefore(behind, from, radius), b: pointBefore(behind, to, radius) }));
}

const liesOn = (part: Part, { a, b }: FrontLine): boolean =>
  part.ring.length === 2 && part.ring.every((p) => Math.min(distance(p, a), distance(p, b)) < 1e-6);

const hasRoom = (field: WaysField, parts: readonly Part[], place: Point, radius: number): boolean =>
  field.isFloor(place) && parts.every((part) => distanceToPart(part, place.x, place.y) >= radius - 1e-6);
