import { type Closest, closestOfParts } from '../../geometry/closest.ts';
import { makePart, type Part, partsOf } from '../../geometry/parts.ts';
import { add, dot, length, type Point, scale, sub, turn } from '../../geometry/vec.ts';
import { at, type Layout, NOWHERE } from './layout.ts';
import { FARTHEST, GRID } from './limits.ts';
import type { Stage, Unit } from './stage.ts';

/** mm: between two samples of a distance along a direction; it has at most one dip, so none narrower is missed that matters. */
const SAMPLE = 25;
/** mm */
const EXACT = 1e-4;

/** What a unit has to keep clear of, or may be pushed against. */
interface Neighbour {
  /** The same for the same thing at the same place. */
  readonly key: string;
  readonly parts: readonly Part[];
}

/** The moves of a unit that are tried. Positions come in whole mm. */
export class Moves {
  private readonly walls: readonly Neighbour[];
  private readonly fixed: readonly Neighbour[];
  private readonly ownParts = new Map<string, readonly Part[]>();
  private readonly known = new Map<string, readonly Point[]>();
  /** mm: what a gap is widened or narrowed to; 0: touching. */
  private readonly gaps: readonly number[];

  constructor(private readonly stage: Stage) {
    const { room, bodies } = stage.scene;
    const jambs = room.openings.flatMap(({ isWayIn, clearA, clearB }) => (isWayIn ? [clearA, clearB] : []));
    this.walls = room.walls.map((wall) => ({ key: wall.id, parts: [makePart(wall.id, [wall.a, wall.b])] }));
    this.fixed = [
      ...this.walls,
      ...jambs.map((jamb, i) => ({ key: `jamb ${i}`, parts: [makePart('jamb', [jamb, jamb])] })),
      ...bodies
        .filter((body) => body.isObstacle && !stage.freeUnitOf(body.id))
        .map((body) => ({ key: body.id, parts: partsOf(body.id, body.footprint) })),
    ];
    const { routeMeets, pinchMeets } = stage.figures;
    this.gaps = [...new Set([0, pinchMeets, routeMeets])];
  }

  /**
   * Where a unit that has not been moved may go, as shifts in mm: along its own four directions until it stands at the
   * width that is asked, or at that of a short pinch, or flush, from a wall, a jamb, a fixture or another piece where
   * that stands in `layout`; straight away from each that is too near; and flush to its nearest wall, however far.
   */
  first(layout: Layout, unit: Unit): Point[] {
    const shifts = new Map<string, Point>();
    const rotation = unit.bodies[0]?.rotation ?? 0;
    for (const direction of directions(rotation))
      for (const shift of this.along(layout, unit, NOWHERE, direction)) if (length(shift) <= FARTHEST + EXACT) keep(shifts, shift);
    for (const neighbour of this.neighbours(layout, unit))
      for (const shift of this.away(unit, neighbour)) if (length(shift) <= FARTHEST + EXACT) keep(shifts, shift);
    const flush = this.toNearestWall(unit);
    if (flush) keep(shifts, flush);
    return [...shifts.values()];
  }

  /** Places of a grid round where a unit stands, along its own directions, at most 500 mm away. */
  onGrid(unit: Unit): Point[] {
    const shifts = new Map<string, Point>();
    const rotation = unit.bodies[0]?.rotation ?? 0;
    for (let along = -FARTHEST; along <= FARTHEST; along += GRID)
      for (let across = -FARTHEST; across <= FARTHEST; across += GRID)
        if (Math.hypot(along, across) <= FARTHEST)
          keep(shifts, this.wholeMm(unit, NOWHERE, turn({ x: along, y: across }, rotation), false));
    return [...shifts.values()];
  }

  /** Further moves of a unit that has been moved once, square to that: where it stands then, as whole shifts in mm. */
  second(layout: Layout, unit: Unit): Point[] {
    const from = at(layout, unit.id);
    const along = scale(from, 1 / length(from));
    const shifts = new Map<string, Point>();
    for (const direction of [turn(along, 90), turn(along, -90)])
      for (const shift of this.along(layout, unit, from, direction)) if (length(shift) <= FARTHEST + EXACT) keep(shifts, shift);
    return [...shifts.values()];
  }

  private along(layout: Layout, unit: Unit, from: Point, direction: Point): Point[] {
    return this.neighbours(layout, unit).flatMap((neighbour) => {
      const key = `${unit.id} ${from.x},${from.y} ${direction.x},${direction.y} ${neighbour.key}`;
      const before = this.known.get(key);
      if (before) return before;
      const found = this.stops(unit, from, direction, neighbour);
      this.known.set(key, found);
      return found;
    });
  }

  /** Where along a direction the distance to a neighbour is one of the gaps. */
  private stops(unit: Unit, from: Point, direction: Point, neighbour: Neighbour): Point[] {
    const distances: number[] = [];
    const distanceAt = (by: number): number => this.distance(unit, add(from, scale(direction, by)), neighbour);
    for (let by = 0; by <= FARTHEST; by += SAMPLE) distances.push(distanceAt(by));
    return this.gaps.flatMap((gap) => {
      const found: Point[] = [];
      // Touching is a little less than the least distance that can be told.
      const level = Math.max(gap, EXACT * 10);
      for (let i = 0; i + 1 < distances.length; i++) {
        const isBelow = (distances[i] as number) < level;
        if (isBelow === (distances[i + 1] as number) < level) continue;
        const by = crossing(distanceAt, i * SAMPLE, (i + 1) * SAMPLE, level);
        // Rounded so that the gap is never too narrow, and what touches does not overlap.
        found.push(this.wholeMm(unit, from, scale(direction, by), isBelow));
      }
      return found;
    });
  }

  /** Straight away from a neighbour that is nearer than a gap asks. */
  private away(unit: Unit, neighbour: Neighbour): Point[] {
    const pair = this.closest(unit, NOWHERE, neighbour);
    if (pair.distance < EXACT) return [];
    const out = scale(sub({ x: pair.ax, y: pair.ay }, { x: pair.bx, y: pair.by }), 1 / pair.distance);
    return this.gaps.flatMap((gap) => (gap > pair.distance ? [this.wholeMm(unit, NOWHERE, scale(out, gap - pair.distance), true)] : []));
  }

  private toNearestWall(unit: Unit): Point | null {
    let nearest: { distance: number; wall: number } | null = null;
    for (const [wall, neighbour] of this.walls.entries()) {
      const { distance } = this.closest(unit, NOWHERE, neighbour);
      if (!nearest || distance < nearest.distance - EXACT) nearest = { distance, wall };
    }
    const wall = nearest && this.stage.scene.room.walls[nearest.wall];
    if (!wall) return null;
    const inwards = unit.bodies.flatMap(({ footprint }) => footprint.map((p) => dot(sub(p, wall.a), wall.inward)));
    const gap = Math.min(...inwards);
    return gap < 1 ? null : this.wholeMm(unit, NOWHERE, scale(wall.inward, -gap), false);
  }

  /** A shift made a little longer (or shorter), so that the piece lands on whole mm. */
  private wholeMm(unit: Unit, from: Point, by: Point, isLonger: boolean): Point {
    const { x, y } = unit.bodies[0]?.center ?? NOWHERE;
    const axis = (start: number, before: number, step: number): number => {
      if (Math.abs(step) < EXACT * 10) return before;
      const isUp = step > 0 === isLonger;
      const end = start + before + step;
      return (isUp ? Math.ceil(end - EXACT * 10) : Math.floor(end + EXACT * 10)) - start;
    };
    return { x: axis(x, from.x, by.x), y: axis(y, from.y, by.y) };
  }

  private neighbours(layout: Layout, unit: Unit): Neighbour[] {
    const own = this.partsAt(unit, NOWHERE);
    const reach = 2 * FARTHEST + Math.max(...this.gaps);
    const isNear = ({ parts }: Neighbour): boolean =>
      parts.some((p) =>
        own.some((q) => p.minX - q.maxX < reach && q.minX - p.maxX < reach && p.minY - q.maxY < reach && q.minY - p.maxY < reach),
      );
    const others = this.stage.free.flatMap((other): Neighbour[] => {
      if (other === unit) return [];
      const shift = at(layout, other.id);
      return [{ key: `${other.id}@${shift.x},${shift.y}`, parts: this.partsAt(other, shift) }];
    });
    return [...this.fixed, ...others].filter(isNear);
  }

  private distance(unit: Unit, by: Point, neighbour: Neighbour): number {
    return this.closest(unit, by, neighbour).distance;
  }

  private closest(unit: Unit, by: Point, { parts }: Neighbour): Closest {
    const best: Closest = { distance: Infinity, ax: 0, ay: 0, bx: 0, by: 0 };
    const one: Closest = { ...best };
    for (const p of this.partsAt(unit, by))
      for (const q of parts) {
        closestOfParts(p, q, one);
        if (one.distance < best.distance) Object.assign(best, one);
      }
    return best;
  }

  /** What a unit puts in the way: its footprint and its seated strips. */
  private partsAt(unit: Unit, by: Point): readonly Part[] {
    const isKept = by.x === 0 && by.y === 0;
    const before = isKept ? this.ownParts.get(unit.id) : undefined;
    if (before) return before;
    const [body] = unit.bodies;
    if (!body) return [];
    const rings = [body.footprint, ...unit.strips.map(({ strip }) => strip)];
    const parts = rings.flatMap((ring) =>
      partsOf(
        unit.id,
        ring.map((p) => add(p, by)),
      ),
    );
    if (isKept) this.ownParts.set(unit.id, parts);
    return parts;
  }
}

const directions = (rotation: number): Point[] => [0, 90, 180, 270].map((quarter) => turn({ x: 1, y: 0 }, rotation + quarter));

function keep(shifts: Map<string, Point>, shift: Point): void {
  if (shift.x !== 0 || shift.y !== 0) shifts.set(`${shift.x},${shift.y}`, shift);
}

/** Where between two places a distance passes a level, to EXACT mm. */
function crossing(distanceAt: (by: number) => number, from: number, to: number, level: number): number {
  const isBelow = distanceAt(from) < level;
  let [low, high] = [from, to];
  while (high - low > EXACT) {
    const middle = (low + high) / 2;
    if (distanceAt(middle) < level === isBelow) low = middle;
    else high = middle;
  }
  return isBelow ? high : low;
}
