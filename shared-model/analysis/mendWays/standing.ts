import { convexParts } from '../../geometry/convexParts.ts';
import { convexPenetration, penetration } from '../../geometry/penetration.ts';
import { type Box, boundingBox, type Polygon } from '../../geometry/polygon.ts';
import { add, type Point } from '../../geometry/vec.ts';
import { distanceOutside, reachesOutside } from '../../geometry/withinRing.ts';
import { cachedParts, canClash, isStanding } from '../../measures/overlaps.ts';
import { type SeatStrip, seatStrips } from '../../measures/seats.ts';
import type { SceneBody } from '../../scene/types.ts';
import { NOWHERE } from './layout.ts';
import type { Stage, Unit } from './stage.ts';

/** mm: closer than this counts as touching */
const TOUCHING = 1;

/** Floor that is taken: by a thing, or by the children seated along a side of a table. */
interface Taken {
  /** The thing, or the table. */
  readonly body: SceneBody;
  readonly isStrip: boolean;
  /** convex, mm */
  readonly parts: readonly Polygon[];
  readonly box: Box;
}

/**
 * Where a unit can stand: inside the walls, out of every leaf's swing, and over nothing that it did not stand over
 * before. The floor that seated children fill is kept for them in the same way.
 */
export class Standing {
  private readonly partsOf = cachedParts();
  private readonly takenBy = new Map<Unit, readonly Taken[]>();
  private readonly swings: readonly (readonly Polygon[])[];
  private readonly fixed: readonly Taken[];
  private readonly known = new Map<string, boolean>();

  constructor(private readonly stage: Stage) {
    const { scene } = stage;
    this.swings = scene.room.openings.flatMap(({ swingFloor }) => (swingFloor ? [convexParts(swingFloor)] : []));
    this.fixed = this.takenOf(
      scene.bodies.filter((body) => isStanding(body) && !stage.freeUnitOf(body.id)),
      seatStrips(scene).filter(({ table }) => !stage.freeUnitOf(table.id)),
    );
  }

  /** Clear of all that stays where it is. */
  isClear(unit: Unit, by: Point): boolean {
    const key = `${unit.id}:${by.x},${by.y}`;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const clear = this.takenByUnit(unit).every((taken) => this.isTakenClear(taken, by));
    this.known.set(key, clear);
    return clear;
  }

  private isTakenClear(taken: Taken, by: Point): boolean {
    const { outline } = this.stage.scene.room;
    const there = moved(taken.parts, by);
    const isOut = reachesOutside(outline, there, TOUCHING);
    // Children may sit as near to a wall as they do; a thing that is moved ends inside.
    if (isOut && (!taken.isStrip || depthOutside(outline, there) > depthOutside(outline, taken.parts) + 1e-6)) return false;
    if (this.swings.some((swing) => this.isWorse(taken.parts, by, swing, NOWHERE))) return false;
    return this.fixed.every((other) => !this.clash(taken, by, other, NOWHERE));
  }

  /** True when two units would stand in the same place, or on the floor of the other's seats, deeper than they do now. */
  isClash(one: Unit, by: Point, other: Unit, otherBy: Point): boolean {
    return this.takenByUnit(one).some((p) => this.takenByUnit(other).some((q) => this.clash(p, by, q, otherBy)));
  }

  private clash(p: Taken, by: Point, q: Taken, otherBy: Point): boolean {
    // Strips stand for their tables here: so the seats of a table stand on its own, and those of one table never clash.
    if (!canClash(p.body, q.body)) return false;
    const [a, b] = [p.box, q.box];
    if (a.minX + by.x >= b.maxX + otherBy.x || b.minX + otherBy.x >= a.maxX + by.x) return false;
    if (a.minY + by.y >= b.maxY + otherBy.y || b.minY + otherBy.y >= a.maxY + by.y) return false;
    return this.isWorse(p.parts, by, q.parts, otherBy);
  }

  private isWorse(p: readonly Polygon[], by: Point, q: readonly Polygon[], otherBy: Point): boolean {
    const depth = penetration(moved(p, by), moved(q, otherBy));
    return depth > TOUCHING && depth > penetration(p, q) + 1e-6;
  }

  private takenByUnit(unit: Unit): readonly Taken[] {
    const before = this.takenBy.get(unit);
    if (before) return before;
    const taken = this.takenOf(unit.bodies, unit.strips);
    this.takenBy.set(unit, taken);
    return taken;
  }

  private takenOf(bodies: readonly SceneBody[], strips: readonly SeatStrip[]): Taken[] {
    return [
      ...bodies.map((body): Taken => ({ body, isStrip: false, parts: this.partsOf(body), box: boundingBox(body.footprint) })),
      ...strips.map(({ table, strip }): Taken => ({ body: table, isStrip: true, parts: [strip], box: boundingBox(strip) })),
    ];
  }
}

/** mm that a shape reaches through the walls at its deepest. */
function depthOutside(ring: Polygon, parts: readonly Polygon[]): number {
  const corners = parts.flatMap((part) => part.map((p) => distanceOutside(ring, p)));
  const walls = ring.flatMap((a, i) => parts.map((part) => convexPenetration(part, [a, ring[(i + 1) % ring.length] as Point])));
  return Math.max(0, ...corners, ...walls);
}

const moved = (parts: readonly Polygon[], by: Point): readonly Polygon[] =>
  by.x === 0 && by.y === 0 ? parts : parts.map((part) => part.map((p) => add(p, by)));
