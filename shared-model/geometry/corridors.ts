import { type ClearanceGrid, gridPoint } from './clearanceGrid.ts';
import { convexSum } from './convexSum.ts';
import type { FrontLine } from './frontLine.ts';
import type { Polygon } from './polygon.ts';
import { rectangle } from './tile.ts';
import { add, length, type Point, sub, turn, unit } from './vec.ts';

/** Somewhere that discs of a diameter (mm) come to touch. Ways start at sources and lead to every end, other sources too. */
export interface CorridorEnd {
  readonly lines: readonly FrontLine[];
  readonly width: number;
  readonly isSource: boolean;
}

/** A way to keep free: discs of the given diameters along a line of points, mm. */
export interface Corridor {
  readonly path: readonly { readonly at: Point; readonly diameter: number }[];
}

/** A lattice point stands for places up to this many steps away. */
const SLACK = 0.6;
/** What a bend costs, in steps over floor that costs nothing. */
const BEND = 3;
/** Farther than any way. */
const FAR = 0x7fffffff;

/**
 * A network of corridors that joins every end to a source, each as wide as its end asks, over floor that costs little
 * (shortest-path heuristic for a Steiner tree, widest first). It is a plan on a lattice: what keeps to it is checked exactly
 * elsewhere. Ends that the lattice cannot reach are left out.
 * @param cost whole numbers from 0, one a lattice point: what is lost by keeping it free
 */
export function planCorridors(grid: ClearanceGrid, cost: Uint8Array, ends: readonly CorridorEnd[]): Corridor[] {
  const plan = new Plan(grid, cost);
  const sources = ends.filter((end) => end.isSource);
  for (const source of sources) plan.addSource(source);
  const order = ends.filter((end) => end.width > 0 && !(end.isSource && end === sources[0])).sort((p, q) => q.width - p.width);
  for (let i = 0; i < order.length; ) {
    const { width } = order[i] as CorridorEnd;
    let j = i;
    while (j < order.length && (order[j] as CorridorEnd).width > width - 1) j++;
    plan.reach(
      order.slice(i, j).filter((end) => !end.isSource),
      width,
    );
    for (const end of order.slice(i, j)) if (end.isSource) plan.reachSource(end, width);
    i = j;
  }
  return plan.corridors;
}

class Plan {
  readonly corridors: Corridor[] = [];
  /** Which source's tree a point belongs to, from 1; 0: none. */
  private readonly tree: Uint16Array;
  private readonly sourcePoints = new Map<CorridorEnd, readonly number[]>();
  private readonly treePoints: number[] = [];
  private readonly distance: Int32Array;
  private readonly from: Int32Array;
  /** How many of those looked for are reached at a point. */
  private readonly goals: Uint16Array;
  /** Points by what it costs to come there, in the order they came: for each cost the first and last of a chain, -1: none. */
  private readonly heads: number[] = [];
  private readonly tails: number[] = [];
  private readonly chained: number[] = [];
  private readonly after: number[] = [];
  private count = 0;

  constructor(
    private readonly grid: ClearanceGrid,
    private readonly cost: Uint8Array,
  ) {
    this.tree = new Uint16Array(cost.length);
    this.distance = new Int32Array(cost.length);
    this.from = new Int32Array(cost.length);
    this.goals = new Uint16Array(cost.length);
  }

  addSource(source: CorridorEnd): void {
    const points = touching(this.grid, source);
    this.sourcePoints.set(source, points);
    const label = this.sourcePoints.size;
    for (const at of points) this.addToTree(at, label);
  }

  private addToTree(at: number, label: number): void {
    this.tree[at] = label;
    this.treePoints.push(at);
  }

  /** Joins ends of one width to any tree, the nearest first. */
  reach(ends: readonly CorridorEnd[], width: number): void {
    const { goals } = this;
    const pointsOf = new Map(ends.map((end) => [end, touching(this.grid, end)]));
    goals.fill(0);
    for (const points of pointsOf.values()) for (const at of points) goals[at] = (goals[at] as number) + 1;
    this.begin(0);
    while (pointsOf.size > 0) {
      const at = this.nearest(width);
      if (at < 0) return;
      this.keep(at, width);
      for (const [end, points] of pointsOf) {
        if (!points.includes(at)) continue;
        for (const point of points) goals[point] = (goals[point] as number) - 1;
        pointsOf.delete(end);
      }
    }
  }

  /** Joins a source to the tree of another. */
  reachSource(source: CorridorEnd, width: number): void {
    const own = [...this.sourcePoints.keys()].indexOf(source) + 1;
    this.begin(own);
    for (let at = 0; at < this.tree.length; at++) this.goals[at] = this.tree[at] === own ? 1 : 0;
    const at = this.nearest(width);
    if (at >= 0) this.keep(at, width);
  }

  /** Starts the search anew from every tree but `not`. */
  private begin(not: number): void {
    this.heads.fill(-1);
    this.count = 0;
    this.distance.fill(FAR);
    for (const at of this.treePoints) if (this.tree[at] !== not) this.startAt(at);
  }

  private startAt(at: number): void {
    this.distance[at] = 0;
    this.from[at] = -1;
    this.push(at, 0);
  }

  private push(at: number, d: number): void {
    const { heads, tails, chained, after } = this;
    while (heads.length <= d) {
      heads.push(-1);
      tails.push(-1);
    }
    const link = this.count++;
    chained[link] = at;
    after[link] = -1;
    if ((heads[d] as number) < 0) heads[d] = link;
    else after[tails[d] as number] = link;
    tails[d] = link;
  }

  /** The goal that costs least to reach; -1: none. The search goes on from what it knew, and from what joined the tree since. */
  private nearest(width: number): number {
    const { grid, cost, distance, from, heads, chained, after, goals } = this;
    const { columns, clear } = grid;
    const least = width / 2 - SLACK * grid.step;
    const steps = [-1, 1, -columns, columns];
    for (let d = 0; d < heads.length; d++) {
      for (let link = heads[d] as number; link >= 0; link = after[link] as number) {
        const at = chained[link] as number;
        if (distance[at] !== d) continue;
        if ((goals[at] as number) > 0) {
          heads[d] = link;
          return at;
        }
        const column = at % columns;
        const before = from[at] as number;
        for (let k = 0; k < 4; k++) {
          if ((k === 0 && column === 0) || (k === 1 && column === columns - 1)) continue;
          const step = steps[k] as number;
          const to = at + step;
          if (to < 0 || to >= distance.length || (clear[to] as number) < least) continue;
          const next = d + 1 + (cost[to] as number) + (before >= 0 && at - before !== step ? BEND : 0);
          if (next >= (distance[to] as number)) continue;
          distance[to] = next;
          from[to] = at;
          this.push(to, next);
        }
      }
      heads[d] = -1;
    }
    return -1;
  }

  /** The way back from a point becomes a corridor and part of the tree. */
  private keep(end: number, width: number): void {
    const { grid, tree, from } = this;
    const points: number[] = [];
    for (let at = end; at >= 0; at = from[at] as number) points.push(at);
    const label = tree[points[points.length - 1] as number] as number;
    for (const point of points) {
      if (tree[point] === 0) this.addToTree(point, label);
      this.startAt(point);
    }
    this.corridors.push({ path: bends(grid, points, width) });
  }
}

/** Lattice points where a disc of the end's width touches one of its lines, give or take. */
function touching(grid: ClearanceGrid, end: CorridorEnd): number[] {
  const found: number[] = [];
  const { frame, step, minU, minV, columns, rows } = grid;
  const slack = SLACK * step;
  const radius = end.width / 2;
  for (const line of end.lines) {
    const a = turn(line.a, -frame);
    const b = turn(line.b, -frame);
    const out = turn(line.outward, -frame);
    const along = unit(sub(b, a));
    const size = length(sub(b, a));
    const us = [
      a.x + out.x * (radius - slack),
      b.x + out.x * (radius - slack),
      a.x + out.x * (radius + slack),
      b.x + out.x * (radius + slack),
    ];
    const vs = [
      a.y + out.y * (radius - slack),
      b.y + out.y * (radius - slack),
      a.y + out.y * (radius + slack),
      b.y + out.y * (radius + slack),
    ];
    const firstC = Math.max(0, Math.floor((Math.min(...us) - minU) / step));
    const lastC = Math.min(columns - 1, Math.ceil((Math.max(...us) - minU) / step));
    const firstR = Math.max(0, Math.floor((Math.min(...vs) - minV) / step));
    const lastR = Math.min(rows - 1, Math.ceil((Math.max(...vs) - minV) / step));
    for (let r = firstR; r <= lastR; r++) {
      const dv = minV + r * step - a.y;
      for (let c = firstC; c <= lastC; c++) {
        const at = r * columns + c;
        if ((grid.clear[at] as number) < radius - slack) continue;
        const du = minU + c * step - a.x;
        const beside = du * along.x + dv * along.y;
        const before = du * out.x + dv * out.y;
        if (beside >= -slack && beside <= size + slack && Math.abs(before - radius) <= slack) found.push(at);
      }
    }
  }
  return found;
}

/** The points where a path bends or changes its width; where it squeezes past something, wide enough to do so. */
function bends(grid: ClearanceGrid, points: readonly number[], width: number): Corridor['path'] {
  // In steps, so that straight runs stay in few pieces.
  const more = SLACK * grid.step;
  const diameterAt = (at: number): number => width + more * Math.ceil((2 * Math.max(0, width / 2 - (grid.clear[at] as number))) / more);
  const kept = points.filter((at, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    if (before === undefined || after === undefined) return true;
    return at - before !== after - at || diameterAt(at) !== diameterAt(before) || diameterAt(at) !== diameterAt(after);
  });
  return kept.map((at) => ({ at: gridPoint(grid, at), diameter: diameterAt(at) }));
}

/** The floor of a corridor as convex rings, one for each straight stretch, square to the lattice (`frame`, degrees). */
export function corridorRings({ path }: Corridor, frame: number): Polygon[] {
  const [first] = path;
  if (!first) return [];
  const about = (diameter: number): Polygon => rectangle(diameter, diameter).map((p) => turn(p, frame));
  if (path.length === 1) return [about(first.diameter).map((p) => add(p, first.at))];
  return path.slice(1).map((next, i) => {
    const last = path[i] ?? first;
    return convexSum([last.at, next.at], about(Math.max(last.diameter, next.diameter)));
  });
}
