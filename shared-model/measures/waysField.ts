import { byWidth, findGaps, type Gap } from '../geometry/gaps.ts';
import { PartGrid } from '../geometry/partGrid.ts';
import { isInPart, makePart, type Part, partsOf } from '../geometry/parts.ts';
import { type Box, boundingBox, contains, type Polygon } from '../geometry/polygon.ts';
import type { Point } from '../geometry/vec.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import { seatStrips } from './seats.ts';
import type { Chairs } from './targets.ts';

/** What stands in the way in one arrangement: walls first (every opening shut), then pieces, seated strips, and what was added. */
export class WaysField {
  readonly parts: readonly Part[];
  readonly grid: PartGrid;
  /** Index of a wall's part by the wall's id. */
  readonly wallIndex: ReadonlyMap<string, number>;
  private readonly hollows: readonly { readonly ring: Polygon; readonly box: Box }[];
  private found: { limit: number; gaps: readonly Gap[] } = { limit: 0, gaps: [] };

  constructor(
    readonly scene: Scene,
    extra: readonly Polygon[] = [],
    chairs: Chairs = 'in use',
  ) {
    const parts: Part[] = scene.room.walls.map((wall) => makePart(wall.id, [wall.a, wall.b]));
    this.wallIndex = new Map(scene.room.walls.map((wall, index) => [wall.id, index]));
    const hollows: { ring: Polygon; box: Box }[] = [];
    const addRing = (ring: Polygon, made: readonly Part[]): void => {
      parts.push(...made);
      if (made.length !== 1) hollows.push({ ring, box: boundingBox(ring) });
    };
    for (const body of scene.bodies) if (body.isObstacle) addRing(body.footprint, bodyParts(body));
    if (chairs === 'in use')
      for (const strip of seatStrips(scene)) addRing(strip.strip, partsOf(strip.table.id, strip.strip));
    for (const [k, ring] of extra.entries()) addRing(ring, partsOf(`extra:${k}`, ring));
    this.parts = parts;
    this.hollows = hollows;
    this.grid = new PartGrid(parts);
  }

  /** Gaps narrower than `limit` mm, narrowest first. */
  gaps(limit: number): readonly Gap[] {
    if (this.found.limit < limit) this.found = { limit, gaps: findGaps(this.parts, limit, this.grid).sort(byWidth) };
    if (this.found.limit === limit) return this.found.gaps;
    return this.found.gaps.filter((gap) => gap.width < limit);
  }

  /** True within the walls and in no piece. Convex pieces are told by their parts, so fronts need ask only for the others. */
  isOpenFloor = (p: Point): boolean => contains(this.scene.room.outline, p) && !this.isInHollow(p);

  /** True within the walls and in no piece at all. */
  isFloor(p: Point): boolean {
    if (!this.isOpenFloor(p)) return false;
    const box = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
    return !this.grid.near(box, 0).some((index) => isInPart(this.parts[index] as Part, p.x, p.y));
  }

  isInHollow(p: Point): boolean {
    return this.hollows.some(
      ({ ring, box }) => p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY && contains(ring, p),
    );
  }
}

const known = new WeakMap<SceneBody, readonly Part[]>();

function bodyParts(body: SceneBody): readonly Part[] {
  const before = known.get(body);
  if (before) return before;
  const made = partsOf(body.id, body.footprint);
  known.set(body, made);
  return made;
}
