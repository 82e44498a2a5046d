import { addGap, byWidth, byWidthThenParts, findGaps, type Gap, mergedGaps, sortedGaps } from '../geometry/gaps.ts';
import { PartGrid } from '../geometry/partGrid.ts';
import { isInPart, makePart, type Part, partsOf } from '../geometry/parts.ts';
import { type Box, boundingBox, contains, type Polygon } from '../geometry/polygon.ts';
import type { Point } from '../geometry/vec.ts';
import { isSameList, keptWith } from '../scene/kept.ts';
import type { Scene, SceneBody, SceneOpening, SceneRoom, SceneWall } from '../scene/types.ts';
import { changeOfParts, type FieldChange } from './fieldChange.ts';
import { FieldLocals } from './fieldLocals.ts';
import { type SeatStrip, seatStrips } from './seats.ts';
import type { Chairs } from './targets.ts';
import type { OpenDoor } from './waysDoor.ts';

/** A ring told by its edges, because it is concave: only asking the ring tells what lies in it. */
interface Hollow {
  readonly ring: Polygon;
  readonly box: Box;
}

/** What one thing puts in the way. */
interface Standing {
  readonly parts: readonly Part[];
  readonly hollow: Hollow | null;
}

/** Tells whether a point lies within the walls and in no concave piece. */
export type OpenFloor = (p: Point) => boolean;

/** What stands in the way in one arrangement: walls first (every opening shut), then pieces, seated strips, and what was added. */
export class WaysField {
  private found: { limit: number; gaps: readonly Gap[] } = { limit: 0, gaps: [] };
  private readonly narrower = new Map<number, readonly Gap[]>();
  /** Doors opened, each with the limit it was opened for. Here and not in a WeakMap, which holds its values for some frames after their key is gone. */
  readonly doors = new Map<SceneOpening, { readonly limit: number; readonly door: OpenDoor }>();

  private constructor(
    readonly scene: Scene,
    private readonly room: SceneRoom,
    readonly parts: readonly Part[],
    /** Index of a wall's part by the wall's id. */
    readonly wallIndex: ReadonlyMap<string, number>,
    private readonly hollows: readonly Hollow[],
    /** True within the walls and in no concave piece. Fronts ask only this: convex pieces are told by their parts. */
    readonly isOpenFloor: OpenFloor,
    readonly grid: PartGrid,
    /** The field this one adds parts to. */
    readonly base: WaysField | null,
    readonly locals: FieldLocals,
  ) {}

  /** @param before the field before a change: what is known of it and still holds is taken over */
  static of(scene: Scene, chairs: Chairs = 'in use', before: WaysField | null = null): WaysField {
    const { room } = scene;
    const parts: Part[] = room.walls.map(wallPart);
    const hollows: Hollow[] = [];
    const add = (standing: Standing): void => {
      for (const part of standing.parts) parts.push(part);
      if (standing.hollow) hollows.push(standing.hollow);
    };
    for (const body of scene.bodies) if (body.isObstacle) add(bodyStanding(body));
    if (chairs === 'in use') for (const strip of seatStrips(scene)) add(stripStanding(strip));
    if (before?.room === room && before.base === null) {
      const change = changeOfParts(before.parts, parts);
      if (change) return WaysField.after(before, change, scene, parts, hollows);
    }
    const wallIndex = new Map(room.walls.map((wall, index) => [wall.id, index]));
    const isOpenFloor = openFloor(room.outline, hollows);
    return new WaysField(scene, room, parts, wallIndex, hollows, isOpenFloor, new PartGrid(parts), null, new FieldLocals());
  }

  private static after(
    before: WaysField,
    change: FieldChange,
    scene: Scene,
    parts: readonly Part[],
    hollows: readonly Hollow[],
  ): WaysField {
    const isSame = isSameList(before.hollows, hollows);
    if (!isSame) {
      const [was, is] = [new Set(before.hollows), new Set(hollows)];
      for (const hollow of before.hollows) if (!is.has(hollow)) change.boxes.push(hollow.box);
      for (const hollow of hollows) if (!was.has(hollow)) change.boxes.push(hollow.box);
    }
    const { room, wallIndex } = before;
    const isOpenFloor = isSame ? before.isOpenFloor : openFloor(room.outline, hollows);
    const grid = change.isShifted ? new PartGrid(parts) : before.grid.after(parts, change.fresh);
    const field = new WaysField(scene, room, parts, wallIndex, hollows, isOpenFloor, grid, null, before.locals.after(change));
    const { limit } = before.found;
    if (limit > 0) field.found = { limit, gaps: gapsAfter(before.found.gaps, change, parts, grid, limit) };
    return field;
  }

  /** The same with further obstacles, such as mats on the floor; what is known of this field is used again. */
  with(extra: readonly Polygon[]): WaysField {
    if (extra.length === 0) return this;
    const parts = [...this.parts];
    const hollows = [...this.hollows];
    for (const [k, ring] of extra.entries()) {
      const standing = standingOf(`${EXTRA}${k}`, ring);
      parts.push(...standing.parts);
      if (standing.hollow) hollows.push(standing.hollow);
    }
    const isOpenFloor = hollows.length === this.hollows.length ? this.isOpenFloor : openFloor(this.room.outline, hollows);
    const grid = new PartGrid(parts, this.grid);
    return new WaysField(this.scene, this.room, parts, this.wallIndex, hollows, isOpenFloor, grid, this, new FieldLocals());
  }

  /** Gaps narrower than `limit` mm, narrowest first. */
  gaps(limit: number): readonly Gap[] {
    if (this.found.limit < limit) {
      this.found = { limit, gaps: this.findGaps(limit) };
      this.narrower.clear();
    }
    if (this.found.limit === limit) return this.found.gaps;
    const known = this.narrower.get(limit);
    if (known) return known;
    const gaps = this.found.gaps.slice(0, countNarrower(this.found.gaps, limit));
    this.narrower.set(limit, gaps);
    return gaps;
  }

  private findGaps(limit: number): readonly Gap[] {
    if (!this.base) return sortedGaps(findGaps(this.parts, limit));
    const gaps = [...this.base.gaps(limit)];
    for (let i = this.base.parts.length; i < this.parts.length; i++)
      for (const j of this.grid.near(this.parts[i] as Part, limit)) if (j < i) addGap(this.parts, j, i, limit, gaps);
    return gaps.sort(byWidth);
  }

  /** True within the walls and in no piece at all. */
  isFloor(p: Point): boolean {
    if (!this.isOpenFloor(p)) return false;
    around.length = 0;
    this.grid.collect({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y }, 0, around);
    for (let k = 0; k < around.length; k++) if (isInPart(this.parts[around[k] as number] as Part, p.x, p.y)) return false;
    return true;
  }

  isInHollow(p: Point): boolean {
    return isInSome(this.hollows, p);
  }
}

/** Used again at each asking. */
const around: number[] = [];

/** What further obstacles are called: this, and which of them. */
const EXTRA = 'extra:';

/** Which of the further obstacles a part's id names; null: it is something else's. */
export const extraNumber = (id: string): number | null => (id.startsWith(EXTRA) ? Number(id.slice(EXTRA.length)) : null);

/** Of its own, so that what keeps it does not keep a whole field. */
const openFloor =
  (outline: Polygon, hollows: readonly Hollow[]): OpenFloor =>
  (p) =>
    contains(outline, p) && !isInSome(hollows, p);

function isInSome(hollows: readonly Hollow[], p: Point): boolean {
  for (const { ring, box } of hollows)
    if (p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY && contains(ring, p)) return true;
  return false;
}

/** Gaps between parts that stayed, and those of the new ones; in the order that a search from the start gives. */
function gapsAfter(
  before: readonly Gap[],
  { indexOf, isShifted, fresh }: FieldChange,
  parts: readonly Part[],
  grid: PartGrid,
  limit: number,
) {
  const stayed: Gap[] = [];
  for (const gap of before) {
    const i = indexOf[gap.i] as number;
    const j = indexOf[gap.j] as number;
    if (i >= 0 && j >= 0) stayed.push(isShifted ? { ...gap, i, j } : gap);
  }
  const isFresh = new Set(fresh);
  const found: Gap[] = [];
  for (const i of fresh)
    for (const j of grid.near(parts[i] as Part, limit)) {
      if (j === i || (isFresh.has(j) && j < i)) continue;
      addGap(parts, Math.min(i, j), Math.max(i, j), limit, found);
    }
  return mergedGaps(stayed, found.sort(byWidthThenParts));
}

/** mm: no disc in the room is wider, no straight line longer. */
export function farthest(scene: Scene): number {
  const { minX, minY, maxX, maxY } = boundingBox(scene.room.outline);
  return Math.hypot(maxX - minX, maxY - minY);
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

function standingOf(id: string, ring: Polygon): Standing {
  const parts = partsOf(id, ring);
  return { parts, hollow: parts.length === 1 ? null : { ring, box: boundingBox(ring) } };
}

const wallPart = keptWith((wall: SceneWall): Part => makePart(wall.id, [wall.a, wall.b]));
const bodyStanding = keptWith((body: SceneBody): Standing => standingOf(body.id, body.footprint));
const stripStanding = keptWith((strip: SeatStrip): Standing => standingOf(strip.table.id, strip.strip));
