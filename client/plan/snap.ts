import { contains, type Polygon } from '#model/geometry/polygon.ts';
import { add, cross, distance, dot, lerp, type Point, type Segment, scale, sub } from '#model/geometry/vec.ts';
import { axesOf, cornersOf, PARALLEL, reachAlong, spanAlong, type TurnedBox, tidyDegrees } from './box.ts';
import { type GapPull, gapPulls, type RowEnd } from './sameGap.ts';

/** A wall as snapping sees it: inner face and unit vector into the room. */
export interface SnapWall extends Segment {
  readonly inward: Point;
  /** id of the corner it starts at */
  readonly corner?: string;
}

export interface SnapScene {
  readonly outline: Polygon;
  readonly walls: readonly SnapWall[];
  /** The other things in the room. */
  readonly others: readonly (TurnedBox & { readonly id?: string })[];
}

export interface SnapOptions {
  /** mm within which a thing lets itself be drawn to its neighbours */
  readonly tolerance: number;
  /** mm within which a wall draws it; else as neighbours do */
  readonly toWall?: number;
  /** Turns its back to a wall it is brought right up to. */
  readonly turnsToWall: boolean;
  /** Nothing draws it (Alt held); it still cannot leave the room. */
  readonly isFree?: boolean;
  /** Several things in one box, which need not lie in the room where none of them does. */
  readonly isLoose?: boolean;
}

/** How the thing came to lie: along which line, and with what. */
export interface SnapLine extends Segment {
  readonly kind: 'wall' | 'flush' | 'aligned' | 'gap';
  /** unit vector along which it was moved */
  readonly axis: Point;
  readonly other: RowEnd;
  /** The gaps, when it lies at the same gap. */
  readonly gap?: Pick<GapPull, 'own' | 'like'>;
}

export interface Snapped {
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly lines: readonly SnapLine[];
}

interface Pull {
  /** unit vector along which the thing is moved */
  readonly axis: Point;
  /** mm along the axis */
  readonly by: number;
  readonly kind: SnapLine['kind'];
  readonly line: Segment;
  readonly other: RowEnd;
  readonly gap?: Pick<GapPull, 'own' | 'like'>;
}

/** mm: how near its centre a thing must be brought to a wall, beyond half its depth, before it turns its back to it. */
const TURN_NEAR = 160;
/** mm: things farther off than this draw nothing into line. */
const ALIGN_WITHIN = 2500;
/** mm that a weaker kind of pull must be nearer to win. */
const PREFER: Readonly<Record<SnapLine['kind'], number>> = { wall: -150, flush: 20, gap: 30, aligned: 45 };

/** Where a thing comes to lie when it is brought to `box`: drawn to walls and neighbours, never out of the room. */
export function snap(box: TurnedBox, scene: SnapScene, options: SnapOptions): Snapped {
  if (options.isFree) return { ...keepInside(box, scene), lines: [] };
  const rotation = options.turnsToWall ? turnedToWall(box, scene.walls) : box.rotation;
  const isKept = !options.isLoose;
  const inside = isKept ? keepInside({ ...box, rotation }, scene) : { ...box, rotation };
  const { tolerance, toWall = tolerance } = options;
  const pulls = [
    ...wallPulls(inside, scene.walls).filter((pull) => Math.abs(pull.by) <= toWall),
    ...neighbourPulls(inside, scene.others).filter((pull) => Math.abs(pull.by) <= tolerance),
    ...gapPulls(inside, scene, tolerance).map(pullToGap),
  ];
  pulls.sort((p, q) => weight(p) - weight(q));
  const first = pulls[0];
  if (!first) return { x: inside.x, y: inside.y, rotation, lines: [] };
  const second = pulls.find((pull) => Math.abs(cross(first.axis, pull.axis)) > 0.1);
  const moved = add(inside, second ? both(first, second) : scale(first.axis, first.by));
  const settled = isKept ? keepInside({ ...inside, ...moved }, scene) : moved;
  // What the room does not let it reach is not said.
  const held = [first, ...(second ? [second] : [])].filter((pull) => Math.abs(dot(sub(settled, moved), pull.axis)) < 0.5);
  const lines = held.map(({ kind, line, axis, other, gap }): SnapLine => ({ kind, ...line, axis, other, ...(gap && { gap }) }));
  return { x: settled.x, y: settled.y, rotation, lines };
}

/** One between two: the stretch it is moved in. */
function pullToGap({ axis, by, own, like }: GapPull): Pull {
  const [first] = own;
  const line = first?.along ?? { a: axis, b: axis };
  const other = first?.between.find(({ id }) => id !== '') ?? { kind: 'thing', id: '' };
  return { axis, by, kind: 'gap', line, other, gap: { own, like } };
}

const weight = (pull: Pull): number => Math.abs(pull.by) + PREFER[pull.kind];

/** The move that satisfies two pulls at once, whatever angle their axes make. */
function both(p: Pull, q: Pull): Point {
  const det = cross(p.axis, q.axis);
  return { x: (p.by * q.axis.y - q.by * p.axis.y) / det, y: (p.axis.x * q.by - q.axis.x * p.by) / det };
}

/** The rotation with the back to the wall the centre was brought right up to, else the one it has. */
function turnedToWall(box: TurnedBox, walls: readonly SnapWall[]): number {
  const near = walls.filter((wall) => isBeside(box, wall, 0) && heightOver(box, wall) <= box.depth / 2 + TURN_NEAR);
  const nearest = closest(near, (wall) => Math.abs(heightOver(box, wall)));
  return nearest ? facingFrom(nearest) : box.rotation;
}

/** The rotation of a thing that stands with its back to a wall. */
export const facingFrom = (wall: Pick<SnapWall, 'inward'>): number =>
  tidyDegrees((Math.atan2(-wall.inward.x, wall.inward.y) * 180) / Math.PI);

/** mm of a point into the room from the wall's face. */
const heightOver = (p: Point, wall: SnapWall): number => dot(sub(p, wall.a), wall.inward);

/** True when the thing, as wide as it is along the wall, lies before the wall and not past its ends. */
function isBeside(box: TurnedBox, wall: SnapWall, reach: number): boolean {
  const long = distance(wall.a, wall.b);
  if (long === 0) return false;
  const along = scale(sub(wall.b, wall.a), 1 / long);
  const at = dot(sub(box, wall.a), along);
  return at + reach > 0 && at - reach < long && heightOver(box, wall) > -reach - box.depth;
}

function wallPulls(box: TurnedBox, walls: readonly SnapWall[]): Pull[] {
  const { u } = axesOf(box.rotation);
  return walls.flatMap((wall): Pull[] => {
    const isParallel = Math.abs(dot(u, wall.inward)) < PARALLEL || Math.abs(cross(u, wall.inward)) < PARALLEL;
    if (!isParallel || !isBeside(box, wall, reachAlong(box, unitAlong(wall)))) return [];
    const gap = heightOver(box, wall) - reachAlong(box, wall.inward);
    return [{ axis: wall.inward, by: -gap, kind: 'wall', line: wall, other: { kind: 'wall', id: wall.corner ?? '' } }];
  });
}

function unitAlong(wall: Segment): Point {
  const long = distance(wall.a, wall.b);
  return long === 0 ? { x: 0, y: 0 } : scale(sub(wall.b, wall.a), 1 / long);
}

function neighbourPulls(box: TurnedBox, others: SnapScene['others']): Pull[] {
  const { u, v } = axesOf(box.rotation);
  const own = cornersOf(box);
  const ownU = spanAlong(own, u);
  const ownV = spanAlong(own, v);
  return others.flatMap((other): Pull[] => {
    if (distance(box, other) > ALIGN_WITHIN + box.width + other.width) return [];
    const turned = axesOf(other.rotation).u;
    if (Math.abs(dot(u, turned)) > PARALLEL && Math.abs(cross(u, turned)) > PARALLEL) return [];
    const corners = cornersOf(other);
    const spanU = spanAlong(corners, u);
    const spanV = spanAlong(corners, v);
    const end: RowEnd = { kind: 'thing', id: other.id ?? '' };
    return [...alongAxis(u, v, ownU, ownV, spanU, spanV, end), ...alongAxis(v, u, ownV, ownU, spanV, spanU, end)];
  });
}

type Span = readonly [number, number];

/** Pulls along one axis: end to end with the neighbour where the two lie side by side, and edges into one line. */
function alongAxis(axis: Point, across: Point, own: Span, ownAcross: Span, other: Span, otherAcross: Span, end: RowEnd): Pull[] {
  const apart = Math.max(otherAcross[0] - ownAcross[1], ownAcross[0] - otherAcross[1]);
  if (apart > ALIGN_WITHIN) return [];
  const low = Math.min(ownAcross[0], otherAcross[0]);
  const high = Math.max(ownAcross[1], otherAcross[1]);
  const lineAt = (at: number): Segment => ({
    a: add(scale(axis, at), scale(across, low)),
    b: add(scale(axis, at), scale(across, high)),
  });
  const pull = (kind: Pull['kind'], from: number, to: number): Pull => ({ axis, by: to - from, kind, line: lineAt(to), other: end });
  const aligned = [
    pull('aligned', own[0], other[0]),
    pull('aligned', own[1], other[1]),
    pull('aligned', (own[0] + own[1]) / 2, (other[0] + other[1]) / 2),
  ];
  // Only things that overlap sideways can stand against each other.
  if (apart > 0) return aligned;
  return [...aligned, pull('flush', own[0], other[1]), pull('flush', own[1], other[0])];
}

/** The box pushed back into the room; where it is too big to fit, at least its centre stays inside. */
export function keepInside(box: TurnedBox, scene: Pick<SnapScene, 'outline' | 'walls'>): TurnedBox {
  let kept = { ...box, ...centreInside(box, scene) };
  for (let round = 0; round < 3; round++) {
    let isMoved = false;
    for (const wall of scene.walls) {
      const reach = reachAlong(kept, wall.inward);
      const over = heightOver(kept, wall);
      // A wall farther behind the thing than the thing is thick belongs to another arm of the room.
      if (over >= reach - 1e-6 || over < -1 || !overlaps(kept, wall)) continue;
      kept = { ...kept, ...add(kept, scale(wall.inward, reach - over)) };
      isMoved = true;
    }
    if (!isMoved) break;
  }
  return { ...kept, ...centreInside(kept, scene) };
}

/** True when the box, seen along the wall, covers some of it: touching end to end does not count. */
function overlaps(box: TurnedBox, wall: SnapWall): boolean {
  const along = unitAlong(wall);
  const reach = reachAlong(box, along) - 1;
  const at = dot(sub(box, wall.a), along);
  return at + reach > 0 && at - reach < distance(wall.a, wall.b);
}

function centreInside(p: Point, scene: Pick<SnapScene, 'outline' | 'walls'>): Point {
  if (scene.outline.length < 3 || contains(scene.outline, p)) return { x: p.x, y: p.y };
  const nearest = closest(scene.walls, (wall) => distance(p, nearestOn(wall, p)));
  return nearest ? add(nearestOn(nearest, p), nearest.inward) : { x: p.x, y: p.y };
}

/** The point of a segment nearest to p. */
export function nearestOn(segment: Segment, p: Point): Point {
  const run = sub(segment.b, segment.a);
  const squared = dot(run, run);
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, segment.a), run) / squared));
  return lerp(segment.a, segment.b, share);
}

/** The item with the least measure; undefined when there is none. */
export function closest<T>(items: readonly T[], measure: (item: T) => number): T | undefined {
  let best: T | undefined;
  let least = Infinity;
  for (const item of items) {
    const value = measure(item);
    if (value >= least) continue;
    least = value;
    best = item;
  }
  return best;
}
