import { convexParts } from '../../geometry/convexParts.ts';
import { penetration } from '../../geometry/penetration.ts';
import { type Box, boundingBox, type Polygon } from '../../geometry/polygon.ts';
import { add, type Point } from '../../geometry/vec.ts';
import { reachesOutside } from '../../geometry/withinRing.ts';
import { cachedParts, canClash, isStanding } from '../../measures/overlaps.ts';
import type { SceneBody } from '../../scene/types.ts';
import { NOWHERE } from './layout.ts';
import type { Stage, Unit } from './stage.ts';

/** mm: closer than this counts as touching */
const TOUCHING = 1;

/** Where a unit can stand: inside the walls, out of every leaf's swing, and over nothing that it did not stand over before. */
export class Standing {
  private readonly partsOf = cachedParts();
  private readonly boxes = new Map<SceneBody, Box>();
  private readonly swings: readonly (readonly Polygon[])[];
  private readonly fixed: readonly SceneBody[];
  private readonly known = new Map<string, boolean>();

  constructor(private readonly stage: Stage) {
    const { scene } = stage;
    this.swings = scene.room.openings.flatMap(({ swingFloor }) => (swingFloor ? [convexParts(swingFloor)] : []));
    this.fixed = scene.bodies.filter((body) => isStanding(body) && !stage.freeUnitOf(body.id));
  }

  /** Clear of all that stays where it is. */
  isClear(unit: Unit, by: Point): boolean {
    const key = `${unit.id}:${by.x},${by.y}`;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const clear = unit.bodies.every((body) => this.isBodyClear(body, by));
    this.known.set(key, clear);
    return clear;
  }

  private isBodyClear(body: SceneBody, by: Point): boolean {
    const { room } = this.stage.scene;
    if (reachesOutside(room.outline, moved(this.partsOf(body), by), TOUCHING)) return false;
    if (this.swings.some((swing) => this.isWorse(this.partsOf(body), by, swing, NOWHERE))) return false;
    return this.fixed.every((other) => !this.clash(body, by, other, NOWHERE));
  }

  /** True when two units would stand in the same place, deeper than they do now. */
  isClash(one: Unit, by: Point, other: Unit, otherBy: Point): boolean {
    return one.bodies.some((p) => other.bodies.some((q) => this.clash(p, by, q, otherBy)));
  }

  private clash(p: SceneBody, by: Point, q: SceneBody, otherBy: Point): boolean {
    if (!canClash(p, q)) return false;
    const a = this.boxOf(p);
    const b = this.boxOf(q);
    if (a.minX + by.x >= b.maxX + otherBy.x || b.minX + otherBy.x >= a.maxX + by.x) return false;
    if (a.minY + by.y >= b.maxY + otherBy.y || b.minY + otherBy.y >= a.maxY + by.y) return false;
    return this.isWorse(this.partsOf(p), by, this.partsOf(q), otherBy);
  }

  private isWorse(p: readonly Polygon[], by: Point, q: readonly Polygon[], otherBy: Point): boolean {
    const depth = penetration(moved(p, by), moved(q, otherBy));
    return depth > TOUCHING && depth > penetration(p, q) + 1e-6;
  }

  private boxOf(body: SceneBody): Box {
    const before = this.boxes.get(body);
    if (before) return before;
    const box = boundingBox(body.footprint);
    this.boxes.set(body, box);
    return box;
  }
}

const moved = (parts: readonly Polygon[], by: Point): readonly Polygon[] =>
  by.x === 0 && by.y === 0 ? parts : parts.map((part) => part.map((p) => add(p, by)));
