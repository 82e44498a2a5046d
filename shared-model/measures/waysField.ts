import { addGap, byWidth, findGaps, type Gap } from '../geometry/gaps.ts';
import { PartGrid } from '../geometry/partGrid.ts';
import { isInPart, makePart, type Part, partsOf } from '../geometry/parts.ts';
import { type Box, boundingBox, contains, type Polygon } from '../geometry/polygon.ts';
import type { Point } from '../geometry/vec.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import { seatStrips } from './seats.ts';
import type { Chairs } from './targets.ts';

/** A ring told by its edges, because it is concave: only asking the ring tells what lies in it. */
interface Hollow {
  readonly ring: Polygon;
  readonly box: Box;
}

/** What stands in the way in one arrangement: walls first (every opening shut), then pieces, seated strips, and what was added. */
export class WaysField {
  private found: { limit: number; gaps: readonly Gap[] } = { limit: 0, gaps: [] };

  private constructor(
    readonly scene: Scene,
    readonly parts: readonly Part[],
    /** Index of a wall's part by the wall's id. */
    readonly wallIndex: ReadonlyMap<string, number>,
    private readonly hollows: readonly Hollow[],
    readonly grid: PartGrid,
    /** The field this one adds parts to. */
    readonly base: WaysField | null,
  ) {}

  static of(scene: Scene, chairs: Chairs = 'in use'): WaysField {
    const { walls } = scene.room;
    const parts: Part[] = walls.map((wall) => makePart(wall.id, [wall.a, wall.b]));
    const hollows: Hollow[] = [];
    for (const body of scene.bodies) if (body.isObstacle) addRing(body.footprint, bodyParts(body), parts, hollows);
    const strips = chairs === 'in use' ? seatStrips(scene) : [];
    for (const { table, strip } of strips) addRing(strip, partsOf(table.id, strip), parts, hollows);
    const wallIndex = new Map(walls.map((wall, index) => [wall.id, index]));
    return new WaysField(scene, parts, wallIndex, hollows, new PartGrid(parts), null);
  }

  /** The same with further obstacles, such as mats on the floor; what is known of this field is used again. */
  with(extra: readonly Polygon[]): WaysField {
    if (extra.length === 0) return this;
    const parts = [...this.parts];
    const hollows = [...this.hollows];
    for (const [k, ring] of extra.entries()) addRing(ring, partsOf(`extra:${k}`, ring), parts, hollows);
    return new WaysField(this.scene, parts, this.wallIndex, hollows, new PartGrid(parts, this.grid), this);
  }

  /** Gaps narrower than `limit` mm, narrowest first. */
  gaps(limit: number): readonly Gap[] {
    if (this.found.limit < limit) this.found = { limit, gaps: this.findGaps(limit) };
    if (this.found.limit === limit) return this.found.gaps;
    return this.found.gaps.slice(0, countNarrower(this.found.gaps, limit));
  }

  private findGaps(limit: number): readonly Gap[] {
    if (!this.base) return findGaps(this.parts, limit, this.grid).sort(byWidth);
    const gaps = [...this.base.gaps(limit)];
    for (let i = this.base.parts.length; i < this.parts.length; i++)
      for (const j of this.grid.near(this.parts[i] as Part, limit)) if (j < i) addGap(this.parts, j, i, limit, gaps);
    return gaps.sort(byWidth);
  }

  /** True within the walls and in no concave piece. Fronts ask only this: convex pieces are told by their parts. */
  isOpenFloor = (p: Point): boolean => contains(this.scene.room.outline, p) && !this.isInHollow(p);

  /** True within the walls and in no piece at all. */
  isFloor(p: Point): boolean {
    if (!this.isOpenFloor(p)) return false;
    const box = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
    return !this.grid.near(box, 0).some((index) => isInPart(this.parts[index] as Part, p.x, p.y));
  }

  isInHollow(p: Point): boolean {
    for (const { ring, box } of this.hollows)
      if (p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY && contains(ring, p)) return true;
    return false;
  }
}

/** mm: no disc in the room is wider, no straight line longer. */
export function farthest(scene: Scene): number {
  const { minX, minY, maxX, maxY } = boundingBox(scene.room.outline);
  return Math.hypot(maxX - minX, maxY - minY);
}

function addRing(ring: Polygon, made: readonly Part[], parts: Part[], hollows: Hollow[]): void {
  parts.push(...made);
  if (made.length !== 1) hollows.push({ ring, box: boundingBox(ring) });
}

/** How many of the gaps, in ascending order, are narrower than `limit` mm. */
function countNarrower(gaps: readonly Gap[], limit: number): number {
  let low = 0;
  let high = gaps.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((gaps[middle] as Gap).width < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

const known = new WeakMap<SceneBody, readonly Part[]>();

function bodyParts(body: SceneBody): readonly Part[] {
  const before = known.get(body);
  if (before) return before;
  const made = partsOf(body.id, body.footprint);
  known.set(body, made);
  return made;
}
