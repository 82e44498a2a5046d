import { Clipper, ClipType, EndType, FillRule, JoinType, type PathD, type PathsD, type PolyPathD, PolyTreeD } from 'clipper2-ts';
import type { FrontLine } from '#model/geometry/frontLine.ts';
import { add, distance, lerp, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { doorLine, type Target } from '#model/measures/targets.ts';
import type { Scene, SceneOpening } from '#model/scene/types.ts';

/**
 * The same question answered by another road: every obstacle grown by half a width with clipper2's round offsets,
 * cut from the room shrunk by as much; what is left falls into pieces, and a disc gets from door to front when one
 * piece holds both.
 */
const DECIMALS = 6;
/** mm */
export interface Exactness {
  /** How far an offset's arc may fall short. */
  readonly arc: number;
  /** A disc this near a front touches it. */
  readonly touch: number;
}
const USUAL: Exactness = { arc: 0.004, touch: 0.002 };
/** mm below the door's own width at which the alcove's answer is asked. */
const BELOW_DOOR = 0.05;

interface Island {
  readonly outer: PathD;
  readonly holes: PathsD;
}

export class ClipperWays {
  private readonly solids: PathsD[];
  private readonly doors: readonly SceneOpening[];
  private readonly islandsAt = new Map<string, Island[]>();
  private readonly grownAt = new Map<number, PathsD>();

  /**
   * Widths are right to about twice the sum of both, and to many times that where a disc is held in a wedge with the
   * front itself, which turns a hair's breadth at the front into much of its width.
   */
  constructor(
    private readonly scene: Scene,
    private readonly exactness: Exactness = USUAL,
  ) {
    const rings = [...scene.bodies.filter((b) => b.isObstacle).map((b) => b.footprint), ...seatStrips(scene).map((s) => s.strip)];
    this.solids = rings.map((ring) => [toPath(ring)]);
    this.doors = scene.room.openings.filter((o) => o.isWayIn);
  }

  /** True when a disc of this width (mm) gets from some door to the front. */
  canReach(target: Target, width: number): boolean {
    return this.doors.some((door) => {
      if (door === target.opening) return false;
      const clear = distance(door.clearA, door.clearB);
      if (width <= clear) return this.throughAlcove(door, target, width);
      return this.throughAlcove(door, target, clear - BELOW_DOOR) && this.fromInnerLine(door, target, width);
    });
  }

  private throughAlcove(door: SceneOpening, target: Target, width: number): boolean {
    const out = scale(door.wall.inward, -1.5 * distance(door.clearA, door.clearB));
    const source = add(lerp(door.clearA, door.clearB, 0.5), scale(out, 0.5));
    // The alcove laps into the room a little, so that the two grow together.
    const lap = scale(door.wall.inward, 0.5);
    const alcove = [add(door.clearA, lap), add(door.clearB, lap), add(door.clearB, out), add(door.clearA, out)];
    const home = this.islands(width, door.id, alcove).find((island) => holds(island, source));
    return home !== undefined && this.touches(home, target.lines, width);
  }

  private fromInnerLine(door: SceneOpening, target: Target, width: number): boolean {
    return this.islands(width, '', null).some(
      (island) => this.touches(island, [doorLine(door)], width) && this.touches(island, target.lines, width),
    );
  }

  /** Some centre in the island lies half a width square before one of the lines. */
  private touches(island: Island, lines: readonly FrontLine[], width: number): boolean {
    return lines.some((line) => {
      const along = unit(sub(line.b, line.a));
      const near = scale(line.outward, width / 2 + this.exactness.touch);
      const a = add(line.a, near);
      const b = add(line.b, near);
      if (holds(island, a) || holds(island, b)) return true;
      return [island.outer, ...island.holes].some((path) => crosses(path, a, along, distance(a, b)));
    });
  }

  private islands(width: number, key: string, alcove: readonly Point[] | null): Island[] {
    const name = `${key}@${width}`;
    const known = this.islandsAt.get(name);
    if (known) return known;
    const room: PathsD = [toPath(this.scene.room.outline)];
    const whole = alcove ? Clipper.unionD(room, [toPath(alcove)], FillRule.NonZero, DECIMALS) : room;
    const shrunk = Clipper.inflatePathsD(whole, -width / 2, JoinType.Round, EndType.Polygon, 2, DECIMALS, this.exactness.arc);
    const tree = new PolyTreeD();
    Clipper.booleanOpDWithPolyTree(ClipType.Difference, shrunk, this.grown(width), tree, FillRule.NonZero, DECIMALS);
    const islands: Island[] = [];
    collect(tree, islands);
    this.islandsAt.set(name, islands);
    return islands;
  }

  private grown(width: number): PathsD {
    const known = this.grownAt.get(width);
    if (known) return known;
    const grown = this.solids.flatMap((solid) =>
      Clipper.inflatePathsD(solid, width / 2, JoinType.Round, EndType.Polygon, 2, DECIMALS, this.exactness.arc),
    );
    this.grownAt.set(width, grown);
    return grown;
  }
}

function collect(node: PolyPathD, islands: Island[]): void {
  for (let i = 0; i < node.count; i++) {
    const outer = node.child(i);
    const holes: PathsD = [];
    for (let k = 0; k < outer.count; k++) {
      const hole = outer.child(k);
      if (hole.poly) holes.push(hole.poly);
      collect(hole, islands);
    }
    if (outer.poly) islands.push({ outer: outer.poly, holes });
  }
}

function toPath(ring: readonly Point[]): PathD {
  const path = ring.map(({ x, y }) => ({ x, y }));
  return Clipper.areaD(path) < 0 ? path.reverse() : path;
}

function holds({ outer, holes }: Island, p: Point): boolean {
  return inside(outer, p) && !holes.some((hole) => inside(hole, p));
}

function inside(path: PathD, p: Point): boolean {
  let isIn = false;
  path.forEach((a, i) => {
    const b = path[(i + path.length - 1) % path.length] as Point;
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) isIn = !isIn;
  });
  return isIn;
}

/** True when the ring crosses the segment of this length from a. */
function crosses(path: PathD, a: Point, along: Point, length: number): boolean {
  return path.some((p, i) => {
    const q = path[(i + 1) % path.length] as Point;
    const v1 = along.x * (p.y - a.y) - along.y * (p.x - a.x);
    const v2 = along.x * (q.y - a.y) - along.y * (q.x - a.x);
    if (v1 > 0 === v2 > 0) return false;
    const t = v1 / (v1 - v2);
    const u = along.x * (p.x + t * (q.x - p.x) - a.x) + along.y * (p.y + t * (q.y - p.y) - a.y);
    return u >= 0 && u <= length;
  });
}
