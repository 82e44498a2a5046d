import { ascendingOrder } from './ascending.ts';
import { Scratch } from './scratch.ts';

/** A drag asks many times a second; fresh arrays each time would keep the collector busy. */
const space = new Scratch();

/**
 * A union-find over parts whose links carry, for every test point at once, the parity of the crossings of an upward
 * ray from the point with the link's path. When a link closes a loop, `closeLoop` gives the points it goes round.
 *
 * Points are kept from left to right, so a link, which is short, has to do with one short run of words; all else of
 * it is zero and is not walked over.
 */
export class ParityForest {
  /** Per test point, from left to right, one bit: the loop just closed goes round it. Zero outside `from` and `to`. */
  readonly loop: Uint32Array;
  /** Indices of the points from left to right. */
  readonly order: Int32Array;
  /** Words of `loop` that are not known to be zero: from the first up to, not including, the last. */
  from = 0;
  to = 0;
  readonly words: number;
  private readonly parent: Int32Array;
  private readonly size: Int32Array;
  private readonly potential: Uint32Array;
  /** The same run of words for each part's potential. */
  private readonly first: Int32Array;
  private readonly past: Int32Array;
  private readonly xs: Float64Array;
  private readonly ys: Float64Array;
  private readonly path: number[] = [];
  private marked: readonly Int32Array[] | null = null;
  private markedPotential: Uint32Array | null = null;

  /** The forest before this one must no longer be in use: both write into the same room. */
  constructor(partCount: number, points: readonly { readonly x: number; readonly y: number }[]) {
    const count = points.length;
    this.words = Math.max(1, (count + 31) >>> 5);
    this.loop = space.words('loop', this.words).fill(0);
    this.parent = space.integers('parent', partCount);
    for (let i = 0; i < partCount; i++) this.parent[i] = i;
    this.size = space.integers('size', partCount).fill(1);
    this.potential = space.words('potential', partCount * this.words).fill(0);
    this.first = space.integers('first', partCount).fill(0);
    this.past = space.integers('past', partCount).fill(0);
    const x = (index: number): number => (points[index] as { readonly x: number }).x;
    this.order = space.integers('order', count);
    this.order.set(ascendingOrder(count, x, (i, j) => x(i) < x(j)));
    this.xs = space.lengths('xs', count);
    this.ys = space.lengths('ys', count);
    for (let k = 0; k < count; k++) {
      const point = points[this.order[k] as number] as { x: number; y: number };
      this.xs[k] = point.x;
      this.ys[k] = point.y;
    }
  }

  /** Remembers the links so far. */
  mark(): void {
    this.marked = [this.parent, this.size, this.first, this.past].map((list) => list.slice());
    this.markedPotential = this.potential.slice();
  }

  /** Forgets the links since the mark. */
  backToMark(): void {
    if (!this.marked || !this.markedPotential) return;
    for (const [k, list] of [this.parent, this.size, this.first, this.past].entries()) list.set(this.marked[k] as Int32Array);
    this.potential.set(this.markedPotential);
  }

  /** Starts the path of the next link. */
  startLink(): void {
    for (let w = this.from; w < this.to; w++) this.loop[w] = 0;
    this.from = this.words;
    this.to = 0;
  }

  /** Adds a straight piece to the path of the link (mm). */
  addPath(x1: number, y1: number, x2: number, y2: number): void {
    if (x1 === x2) return;
    const { xs, ys, loop } = this;
    const isForward = x1 < x2;
    const left = isForward ? x1 : x2;
    const right = isForward ? x2 : x1;
    const yLeft = isForward ? y1 : y2;
    const slope = ((isForward ? y2 : y1) - yLeft) / (right - left);
    const start = this.firstFrom(left);
    let k = start;
    for (; k < xs.length; k++) {
      const x = xs[k] as number;
      if (x >= right) break;
      if (yLeft + (x - left) * slope >= (ys[k] as number)) continue;
      const word = k >>> 5;
      loop[word] = (loop[word] as number) ^ (1 << (k & 31));
    }
    if (k === start) return;
    const from = start >>> 5;
    const to = ((k - 1) >>> 5) + 1;
    if (from < this.from) this.from = from;
    if (to > this.to) this.to = to;
  }

  /** Joins two parts by the path added. True when that closes a loop round at least one point but not round all space. */
  closeLoop(i: number, j: number): boolean {
    const a = this.find(i);
    const b = this.find(j);
    if (i !== a) this.addPotential(i);
    if (j !== b) this.addPotential(j);
    const { loop, from, to } = this;
    if (a === b) {
      for (let w = from; w < to; w++) if (loop[w] !== 0) return true;
      return false;
    }
    const isSmaller = (this.size[a] as number) < (this.size[b] as number);
    const under = isSmaller ? a : b;
    const over = isSmaller ? b : a;
    this.parent[under] = over;
    this.size[over] = (this.size[over] as number) + (this.size[under] as number);
    // A root's own potential is zero until now.
    const at = under * this.words;
    for (let w = from; w < to; w++) this.potential[at + w] = loop[w] as number;
    this.first[under] = from;
    this.past[under] = to;
    return false;
  }

  private addPotential(i: number): void {
    const { loop, potential } = this;
    const first = this.first[i] as number;
    const past = this.past[i] as number;
    if (first >= past) return;
    const at = i * this.words;
    for (let w = first; w < past; w++) loop[w] = (loop[w] as number) ^ (potential[at + w] as number);
    if (first < this.from) this.from = first;
    if (past > this.to) this.to = past;
  }

  private find(i: number): number {
    const { parent, potential, words, path, first, past } = this;
    let root = i;
    let steps = 0;
    while (parent[root] !== root) {
      path[steps++] = root;
      root = parent[root] as number;
    }
    for (let k = steps - 2; k >= 0; k--) {
      const node = path[k] as number;
      const above = path[k + 1] as number;
      parent[node] = root;
      const from = first[above] as number;
      const to = past[above] as number;
      if (from >= to) continue;
      const [at, atAbove] = [node * words, above * words];
      for (let w = from; w < to; w++) potential[at + w] = (potential[at + w] as number) ^ (potential[atAbove + w] as number);
      const isEmpty = (first[node] as number) >= (past[node] as number);
      if (isEmpty || from < (first[node] as number)) first[node] = from;
      if (isEmpty || to > (past[node] as number)) past[node] = to;
    }
    return root;
  }

  private firstFrom(x: number): number {
    let low = 0;
    let high = this.xs.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((this.xs[middle] as number) < x) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
