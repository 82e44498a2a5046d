import { Scratch } from './scratch.ts';

/** A drag asks many times a second; fresh arrays each time would keep the collector busy. */
const space = new Scratch();

/**
 * A union-find over parts whose links carry, for every test point at once, the parity of the crossings of an upward
 * ray from the point with the link's path. When a link closes a loop, `closeLoop` gives the points it goes round.
 */
export class ParityForest {
  /** Per test point one bit: the loop just closed goes round it. */
  readonly loop: Uint32Array;
  readonly words: number;
  private readonly parent: Int32Array;
  private readonly size: Int32Array;
  private readonly potential: Uint32Array;
  private readonly order: Int32Array;
  private readonly xs: Float64Array;
  private readonly ys: Float64Array;
  private readonly path: number[] = [];
  private marked: { readonly parent: Int32Array; readonly size: Int32Array; readonly potential: Uint32Array } | null = null;

  /** The forest before this one must no longer be in use: both write into the same room. */
  constructor(partCount: number, points: readonly { readonly x: number; readonly y: number }[]) {
    const count = points.length;
    this.words = Math.max(1, (count + 31) >>> 5);
    this.loop = space.words('loop', this.words);
    this.parent = space.integers('parent', partCount);
    for (let i = 0; i < partCount; i++) this.parent[i] = i;
    this.size = space.integers('size', partCount).fill(1);
    this.potential = space.words('potential', partCount * this.words).fill(0);
    // Sorted by x, so that a piece of path meets the rays of one run of points.
    this.order = sortedByX(points);
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
    this.marked = { parent: this.parent.slice(), size: this.size.slice(), potential: this.potential.slice() };
  }

  /** Forgets the links since the mark. */
  backToMark(): void {
    if (!this.marked) return;
    this.parent.set(this.marked.parent);
    this.size.set(this.marked.size);
    this.potential.set(this.marked.potential);
  }

  /** Starts the path of the next link. */
  startLink(): void {
    this.loop.fill(0);
  }

  /** Adds a straight piece to the path of the link (mm). */
  addPath(x1: number, y1: number, x2: number, y2: number): void {
    if (x1 === x2) return;
    const isForward = x1 < x2;
    const left = isForward ? x1 : x2;
    const right = isForward ? x2 : x1;
    const yLeft = isForward ? y1 : y2;
    const slope = ((isForward ? y2 : y1) - yLeft) / (right - left);
    for (let k = this.firstFrom(left); k < this.xs.length; k++) {
      const x = this.xs[k] as number;
      if (x >= right) break;
      if (yLeft + (x - left) * slope >= (this.ys[k] as number)) continue;
      const point = this.order[k] as number;
      const word = point >>> 5;
      this.loop[word] = (this.loop[word] as number) ^ (1 << (point & 31));
    }
  }

  /** Joins two parts by the path added. True when that closes a loop round at least one point but not round all space. */
  closeLoop(i: number, j: number): boolean {
    const a = this.find(i);
    const b = this.find(j);
    const { loop, potential, words } = this;
    if (i !== a) for (let w = 0; w < words; w++) loop[w] = (loop[w] as number) ^ (potential[i * words + w] as number);
    if (j !== b) for (let w = 0; w < words; w++) loop[w] = (loop[w] as number) ^ (potential[j * words + w] as number);
    if (a === b) {
      for (let w = 0; w < words; w++) if (loop[w] !== 0) return true;
      return false;
    }
    const isSmaller = (this.size[a] as number) < (this.size[b] as number);
    const under = isSmaller ? a : b;
    const over = isSmaller ? b : a;
    this.parent[under] = over;
    this.size[over] = (this.size[over] as number) + (this.size[under] as number);
    potential.set(loop, under * words);
    return false;
  }

  private find(i: number): number {
    const { parent, potential, words, path } = this;
    let root = i;
    let steps = 0;
    while (parent[root] !== root) {
      path[steps++] = root;
      root = parent[root] as number;
    }
    for (let k = steps - 2; k >= 0; k--) {
      const node = path[k] as number;
      const above = path[k + 1] as number;
      for (let w = 0; w < words; w++)
        potential[node * words + w] = (potential[node * words + w] as number) ^ (potential[above * words + w] as number);
      parent[node] = root;
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

const INDEX_SPAN = 2 ** 20;

/** Indices of the points from left to right: sorted as plain numbers, which makes nothing for the collector, then exactly. */
function sortedByX(points: readonly { readonly x: number }[]): Int32Array {
  const count = points.length;
  const x = (index: number): number => (points[index] as { x: number }).x;
  const keys = space.lengths('keys', count);
  // To 0.01 mm, with the index in the lower digits; both fit into a double.
  for (let k = 0; k < count; k++) keys[k] = Math.round(x(k) * 100) * INDEX_SPAN + k;
  keys.sort();
  const order = space.integers('order', count);
  for (let k = 0; k < count; k++) {
    const key = keys[k] as number;
    const index = key - Math.floor(key / INDEX_SPAN) * INDEX_SPAN;
    let at = k;
    for (; at > 0 && x(order[at - 1] as number) > x(index); at--) order[at] = order[at - 1] as number;
    order[at] = index;
  }
  return order;
}
