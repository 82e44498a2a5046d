import { type Closest, closestOfParts } from './closest.ts';
import { MinHeap } from './minHeap.ts';
import { PartGrid } from './partGrid.ts';
import { makePart, type Part } from './parts.ts';
import { add, distance, dot, type Point, type Segment, scale, sub, unit } from './vec.ts';
import { arcBetween, cornersOf, isOutermost, type Sense, tangentBetween, type WalkCorner } from './walkCorners.ts';

/** Where a walk may start or end: the body's centre on any of the places, or anywhere on the segments (all of them free). */
export interface WalkEnd {
  readonly places: readonly Point[];
  readonly segments: readonly Segment[];
}

/** mm: a body of no size is taken as this small, so that touching pieces stay shut; its walks are right to about 0.001. */
const LEAST_RADIUS = 1e-4;

/** One straight piece of a walk. */
interface Leg {
  /** Index of the corner it arrives at; -1: the goal. */
  readonly corner: number;
  readonly sense: Sense;
  /** Directions from the corners' centres where it leaves and arrives. */
  readonly outX: number;
  readonly outY: number;
  readonly intoX: number;
  readonly intoY: number;
  /** Where it arrives. */
  readonly at: Point;
  readonly length: number;
}

/**
 * Shortest walks of a round body among obstacles: straight tangents between the corners' circles and arcs round
 * them, found by a best-first search that builds the tangents of a corner when it gets there. Exact.
 */
export class Walker {
  private readonly radius: number;
  private readonly slack: number;
  private readonly corners: readonly WalkCorner[];
  private readonly grid: PartGrid;
  private readonly legs = new Map<number, Leg[]>();
  private readonly closest: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };

  /** @param body mm, the body's diameter */
  constructor(
    private readonly parts: readonly Part[],
    body: number,
  ) {
    this.radius = Math.max(body / 2, LEAST_RADIUS);
    this.slack = Math.min(1e-6, this.radius / 100);
    this.grid = new PartGrid(parts);
    this.corners = cornersOf(parts, this.grid);
  }

  /** mm, the length of the shortest walk; null: there is none. */
  walk(start: WalkEnd, goal: WalkEnd): number | null {
    const heap = new MinHeap<Leg>();
    const walkedTo = new Map<Leg, number>();
    const done = new Set<Leg>();
    const push = (leg: Leg, walked: number): void => {
      walkedTo.set(leg, walked);
      heap.push(walked + (leg.corner < 0 ? 0 : awayFrom(goal, leg.at)), leg);
    };
    for (const leg of this.legsFromEnd(start, goal)) push(leg, leg.length);
    const toGoal = new Map<number, Leg[]>();
    for (let top = heap.pop(); top; top = heap.pop()) {
      const leg = top.value;
      const walked = walkedTo.get(leg) as number;
      if (leg.corner < 0) return walked;
      if (done.has(leg)) continue;
      done.add(leg);
      const key = keyOf(leg);
      const last = toGoal.get(key) ?? this.legsToEnd(leg, goal);
      toGoal.set(key, last);
      for (const next of [...last, ...this.legsFrom(leg)]) {
        if (done.has(next)) continue;
        const arc = arcBetween(leg.intoX, leg.intoY, next.outX, next.outY, leg.sense);
        if (arc > Math.PI || !this.isArcFree(leg, next)) continue;
        const length = walked + arc * this.radius + next.length;
        if (length < (walkedTo.get(next) ?? Infinity)) push(next, length);
      }
    }
    return null;
  }

  /** Tangents from the start to corners and, straight, to the goal. */
  private legsFromEnd(start: WalkEnd, goal: WalkEnd): Leg[] {
    const legs: Leg[] = [];
    for (const place of start.places) {
      for (const end of goal.places) this.addLeg(legs, -1, 0, place, 0, -1, end);
      for (const segment of goal.segments) this.addStraight(legs, place, footOn(segment, place));
    }
    for (const segment of start.segments) for (const end of goal.places) this.addStraight(legs, footOn(segment, end), end);
    for (const index of this.corners.keys()) {
      for (const sense of [1, -1] as const) {
        for (const place of start.places) this.addLeg(legs, -1, 0, place, sense, index);
        for (const segment of start.segments) this.addSquare(legs, segment, index, sense, true);
      }
    }
    return legs;
  }

  private legsToEnd({ corner, sense }: Leg, goal: WalkEnd): Leg[] {
    const legs: Leg[] = [];
    const { at } = this.corners[corner] as WalkCorner;
    for (const end of goal.places) this.addLeg(legs, corner, sense, at, 0, -1, end);
    for (const segment of goal.segments) this.addSquare(legs, segment, corner, sense, false);
    return legs;
  }

  private legsFrom(leg: Leg): Leg[] {
    const key = keyOf(leg);
    const known = this.legs.get(key);
    if (known) return known;
    const legs: Leg[] = [];
    const { at } = this.corners[leg.corner] as WalkCorner;
    for (const index of this.corners.keys())
      if (index !== leg.corner) for (const sense of [1, -1] as const) this.addLeg(legs, leg.corner, leg.sense, at, sense, index);
    this.legs.set(key, legs);
    return legs;
  }

  private addLeg(legs: Leg[], from: number, leave: Sense, at: Point, arrive: Sense, to: number, end?: Point): void {
    const target = end ?? (this.corners[to] as WalkCorner).at;
    const found = tangentBetween(at, leave, target, arrive, this.radius);
    if (!found) return;
    const { outX, outY, intoX, intoY, p, q } = found;
    if (from >= 0 && !isOutermost(this.corners[from] as WalkCorner, outX, outY)) return;
    if (to >= 0 && !isOutermost(this.corners[to] as WalkCorner, intoX, intoY)) return;
    if (!this.isFree(p, q)) return;
    legs.push({ corner: to, sense: arrive, outX, outY, intoX, intoY, at: q, length: distance(p, q) });
  }

  private addStraight(legs: Leg[], p: Point, q: Point): void {
    if (!this.isFree(p, q)) return;
    legs.push({ corner: -1, sense: 0, outX: 0, outY: 0, intoX: 0, intoY: 0, at: q, length: distance(p, q) });
  }

  /** A straight piece square to a segment of an end, touching a corner's circle. */
  private addSquare(legs: Leg[], segment: Segment, index: number, sense: Sense, isStart: boolean): void {
    const corner = this.corners[index] as WalkCorner;
    const along = unit(sub(segment.b, segment.a));
    const off = sub(corner.at, segment.a);
    const square = { x: -along.y, y: along.x };
    const towards = dot(off, square) > 0 ? square : scale(square, -1);
    const travel = isStart ? towards : scale(towards, -1);
    const out = { x: sense * travel.y, y: -sense * travel.x };
    if (!isOutermost(corner, out.x, out.y)) return;
    const onCircle = add(corner.at, scale(out, this.radius));
    const u = dot(sub(onCircle, segment.a), along);
    if (u < 0 || u > distance(segment.a, segment.b)) return;
    const foot = add(segment.a, scale(along, u));
    if (!this.isFree(foot, onCircle)) return;
    const length = distance(foot, onCircle);
    if (isStart) legs.push({ corner: index, sense, outX: 0, outY: 0, intoX: out.x, intoY: out.y, at: onCircle, length });
    else legs.push({ corner: -1, sense: 0, outX: out.x, outY: out.y, intoX: 0, intoY: 0, at: foot, length });
  }

  /** True when the body can go straight from p to q. */
  private isFree(p: Point, q: Point): boolean {
    const line = makePart('', [p, q]);
    for (const index of this.grid.near(line, this.radius)) {
      closestOfParts(line, this.parts[index] as Part, this.closest);
      if (this.closest.distance < this.radius - this.slack) return false;
    }
    return true;
  }

  /** True when nothing else reaches into the arc on which the body turns. */
  private isArcFree(leg: Leg, next: Leg): boolean {
    if (this.radius <= LEAST_RADIUS) return true;
    const { at } = this.corners[leg.corner] as WalkCorner;
    const center = makePart('', [at]);
    const arc = arcBetween(leg.intoX, leg.intoY, next.outX, next.outY, leg.sense);
    for (const index of this.grid.near(center, 2 * this.radius)) {
      closestOfParts(center, this.parts[index] as Part, this.closest);
      const away = this.closest.distance;
      if (away < this.slack || away >= 2 * this.radius - this.slack) continue;
      // Nearest where the arc faces the part; if it never does, its ends tell, and those are free.
      const to = arcBetween(leg.intoX, leg.intoY, (this.closest.bx - at.x) / away, (this.closest.by - at.y) / away, leg.sense);
      if (to <= arc) return false;
    }
    return true;
  }
}

const keyOf = ({ corner, sense }: Leg): number => corner * 2 + (sense > 0 ? 1 : 0);

function footOn({ a, b }: Segment, p: Point): Point {
  const along = sub(b, a);
  const square = dot(along, along);
  return square === 0 ? a : add(a, scale(along, Math.min(1, Math.max(0, dot(sub(p, a), along) / square))));
}

function awayFrom(end: WalkEnd, p: Point): number {
  let least = Infinity;
  for (const place of end.places) least = Math.min(least, distance(place, p));
  for (const segment of end.segments) least = Math.min(least, distance(footOn(segment, p), p));
  return least;
}
