import { type FloorMesh, triangleAt } from './floorMesh.ts';
import { MinHeap } from './minHeap.ts';
import { distance, lerp, type Point } from './vec.ts';

/** Turns smaller than this (mm² of the triangle spanned) are none. */
const STRAIGHT = 1e-6;
/** After so many looks the farthest place is told as between two figures. */
const MOST_LOOKS = 4000;

/** The place that is farthest to walk to. */
export interface Farthest {
  readonly at: Point;
  /** mm of the walk to that place */
  readonly least: number;
  /** mm: no walk to any place is longer */
  readonly most: number;
}

/**
 * Shortest walks of a point over a floor cut into triangles, from the nearest of some sources. What a point sees is
 * found by looking through one triangle's side after the other; walks bend only at corners. Exact but for rounding.
 */
export class WalkField {
  /** mm from the nearest source to each point of the mesh; Infinity: no walk. */
  readonly lengths: Float64Array;
  private readonly sources = new Map<number, Point[]>();

  constructor(
    private readonly mesh: FloorMesh,
    sources: readonly Point[],
  ) {
    this.lengths = new Float64Array(mesh.points.length).fill(Infinity);
    const heap = new MinHeap<number>();
    const done = new Uint8Array(mesh.points.length);
    const cameFrom: Point[] = [];
    const offer = (to: number, length: number, from: Point): void => {
      if (length >= (this.lengths[to] as number)) return;
      this.lengths[to] = length;
      cameFrom[to] = from;
      heap.push(length, to);
    };
    for (const source of sources) {
      const t = triangleAt(mesh, source);
      if (t < 0) continue;
      this.sources.set(t, [...(this.sources.get(t) ?? []), source]);
      this.lookFrom(source, t, (to) => offer(to, distance(source, mesh.points[to] as Point), source));
    }
    for (let top = heap.pop(); top; top = heap.pop()) {
      const from = top.value;
      if (done[from]) continue;
      done[from] = 1;
      if (!mesh.bends[from]) continue;
      const base = this.lengths[from] as number;
      const at = mesh.points[from] as Point;
      this.lookPast(from, cameFrom[from] as Point, (to) => {
        if (!done[to]) offer(to, base + distance(at, mesh.points[to] as Point), at);
      });
    }
  }

  /** True when a source lies on the floor. */
  get hasSource(): boolean {
    return this.sources.size > 0;
  }

  /** mm from the nearest source; Infinity: no walk, or off the floor. */
  lengthTo(p: Point): number {
    const t = triangleAt(this.mesh, p);
    return t < 0 ? Infinity : this.lengthWithin(p, t);
  }

  /** The farthest place that can be walked to, to within `within` mm; null: none can. */
  farthest(within: number): Farthest | null {
    const { points, corners } = this.mesh;
    let best: { at: Point; length: number } | null = null;
    const heap = new MinHeap<Cell>();
    let leftOut = 0;
    const offer = (cell: Cell): void => {
      const most = longestIn(cell);
      if (!best || most > best.length + within) heap.push(-most, cell);
      else leftOut = Math.max(leftOut, most);
    };
    const keep = (at: Point, length: number): void => {
      if (!best || length > best.length) best = { at, length };
    };
    const cells: Cell[] = [];
    for (let t = 0; 3 * t < corners.length; t++) {
      const index = [0, 1, 2].map((k) => corners[3 * t + k] as number);
      const lengths = index.map((i) => this.lengths[i] as number);
      if (lengths.some((length) => length === Infinity)) continue;
      const at = index.map((i) => points[i] as Point);
      for (const [k, p] of at.entries()) keep(p, lengths[k] as number);
      cells.push({ triangle: t, at, lengths });
    }
    cells.forEach(offer);
    let looks = 0;
    for (let top = heap.pop(); top; top = heap.pop()) {
      const found = best as { at: Point; length: number } | null;
      if (!found) break;
      if (-top.key <= found.length + within || looks >= MOST_LOOKS) {
        leftOut = Math.max(leftOut, -top.key);
        break;
      }
      looks++;
      for (const half of this.halves(top.value, keep)) offer(half);
    }
    const found = best as { at: Point; length: number } | null;
    return found && { at: found.at, least: found.length, most: Math.max(found.length, leftOut) };
  }

  /** Cut across the middle of its longest side. */
  private halves({ triangle, at, lengths }: Cell, keep: (at: Point, length: number) => void): Cell[] {
    let k = 0;
    let longest = -1;
    for (let i = 0; i < 3; i++) {
      const side = distance(at[i] as Point, at[(i + 1) % 3] as Point);
      if (side <= longest) continue;
      longest = side;
      k = i;
    }
    const [a, b, c] = [k, (k + 1) % 3, (k + 2) % 3] as [number, number, number];
    const middle = lerp(at[a] as Point, at[b] as Point, 0.5);
    const length = this.lengthWithin(middle, triangle);
    keep(middle, length);
    return [a, b].map((end) => ({
      triangle,
      at: [at[end] as Point, middle, at[c] as Point],
      lengths: [lengths[end] as number, length, lengths[c] as number],
    }));
  }

  private lengthWithin(p: Point, triangle: number): number {
    let least = Infinity;
    const look = (to: number): void => {
      const length = (this.lengths[to] as number) + distance(p, this.mesh.points[to] as Point);
      if (length < least) least = length;
    };
    this.lookFrom(p, triangle, look, (source) => {
      least = Math.min(least, distance(p, source));
    });
    return least;
  }

  /** Tells every corner that a point within a triangle sees, and every source. */
  private lookFrom(p: Point, triangle: number, sees: (corner: number) => void, seesSource?: (source: Point) => void): void {
    for (const t of this.trianglesAt(p, triangle)) {
      for (let k = 0; k < 3; k++) sees(this.mesh.corners[3 * t + k] as number);
      if (seesSource) this.sources.get(t)?.forEach(seesSource);
      for (let k = 0; k < 3; k++) this.through(p, t, k, sees, seesSource);
    }
  }

  /** The triangle a point lies in, and those across the sides it lies on. */
  private trianglesAt(p: Point, triangle: number): number[] {
    const { corners, points, across } = this.mesh;
    const found = [triangle];
    for (let k = 0; k < 3; k++) {
      const a = points[corners[3 * triangle + k] as number] as Point;
      const b = points[corners[3 * triangle + ((k + 1) % 3)] as number] as Point;
      const beyond = across[3 * triangle + k] as number;
      if (beyond >= 0 && Math.abs(turnOf(p, a, b)) <= STRAIGHT) found.push(beyond);
    }
    return found;
  }

  /** Tells the corners seen from a corner that a walk reaches from `before`: only those hidden from there by what it bends round. */
  private lookPast(from: number, before: Point, sees: (corner: number) => void): void {
    const { corners, points, round, rims } = this.mesh;
    const at = points[from] as Point;
    const ahead = { x: 2 * at.x - before.x, y: 2 * at.y - before.y };
    const [after, last] = rims[from] ?? [];
    // Straight on and to the side where the edge of the floor comes within half a turn; both where that is not plain.
    const isRight = !last || turnOf(at, ahead, last) > -STRAIGHT;
    const isLeft = !after || turnOf(at, ahead, after) < STRAIGHT;
    for (const t of round[from] ?? []) {
      let k = 0;
      while (k < 2 && corners[3 * t + k] !== from) k++;
      const side = (k + 1) % 3;
      const a = corners[3 * t + side] as number;
      const b = corners[3 * t + ((side + 1) % 3)] as number;
      sees(a);
      sees(b);
      const [p, q] = [points[a] as Point, points[b] as Point];
      const pTurn = turnOf(at, ahead, p);
      const qTurn = turnOf(at, ahead, q);
      if (isRight && (pTurn >= 0 || qTurn > 0)) this.through(at, t, side, sees, undefined, [pTurn < 0 ? ahead : p, qTurn < 0 ? before : q]);
      if (isLeft && (pTurn < 0 || qTurn <= 0)) this.through(at, t, side, sees, undefined, [pTurn > 0 ? before : p, qTurn > 0 ? ahead : q]);
    }
  }

  /** Looks from p out of a triangle through its side `k`, all of which p sees, between two directions (else all of it). */
  private through(
    p: Point,
    triangle: number,
    k: number,
    sees: (corner: number) => void,
    seesSource?: (source: Point) => void,
    between?: readonly [Point, Point],
  ): void {
    const { points, corners, across } = this.mesh;
    const [a, b] = between ?? [
      points[corners[3 * triangle + k] as number] as Point,
      points[corners[3 * triangle + ((k + 1) % 3)] as number] as Point,
    ];
    // Windows still to look through: a triangle entered, and the two edges of what is seen, right of one and left of the other.
    const open: [number, number, Point, Point][] = [[across[3 * triangle + k] as number, triangle, a, b]];
    for (let window = open.pop(); window; window = open.pop()) {
      const [t, before, from, to] = window;
      if (t < 0 || turnOf(p, from, to) <= STRAIGHT) continue;
      let entered = 0;
      while (entered < 3 && across[3 * t + entered] !== before) entered++;
      if (entered === 3) continue;
      const far = corners[3 * t + ((entered + 2) % 3)] as number;
      const c = points[far] as Point;
      const pastFrom = turnOf(p, from, c);
      const beforeTo = turnOf(p, c, to);
      if (pastFrom >= -STRAIGHT && beforeTo >= -STRAIGHT) sees(far);
      if (seesSource) {
        for (const source of this.sources.get(t) ?? [])
          if (turnOf(p, from, source) >= -STRAIGHT && turnOf(p, source, to) >= -STRAIGHT) seesSource(source);
      }
      // Entered from behind, the side runs from `to` to `from`: next comes from-c, then c-to.
      if (pastFrom > STRAIGHT) open.push([across[3 * t + ((entered + 1) % 3)] as number, t, from, beforeTo > 0 ? c : to]);
      if (beforeTo > STRAIGHT) open.push([across[3 * t + ((entered + 2) % 3)] as number, t, pastFrom > 0 ? c : from, to]);
    }
  }
}

/** A part of a triangle of the mesh with the walks to its corners. */
interface Cell {
  readonly triangle: number;
  readonly at: readonly Point[];
  readonly lengths: readonly number[];
}

/** mm: no walk to a place within is longer, since from each corner all of it is in plain view. */
function longestIn({ at, lengths }: Cell): number {
  const [a, b, c] = at as [Point, Point, Point];
  const [ab, bc, ca] = [distance(a, b), distance(b, c), distance(c, a)];
  const [la, lb, lc] = lengths as [number, number, number];
  return Math.min(la + Math.max(ab, ca), lb + Math.max(ab, bc), lc + Math.max(bc, ca));
}

/** Positive when q comes before r, seen from p and turning clockwise on the plan (y down). */
const turnOf = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
