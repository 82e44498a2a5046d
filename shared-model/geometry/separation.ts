import type { Gap } from './gaps.ts';
import { ParityForest } from './parityForest.ts';
import type { Part } from './parts.ts';
import { Scratch } from './scratch.ts';
import type { Point } from './vec.ts';
import { workDone } from './workDone.ts';

/**
 * Which gap first cuts each point off from each source, when gaps close in ascending order of width.
 * `points[k]` for `source` s: the gap, or null when nothing among the gaps cuts it off.
 */
export type Separation = readonly (readonly (Gap | null)[])[];

const space = new Scratch();

/** Gaps that count as open. */
export type IsExempt = (gap: Gap) => boolean;

/** Gaps that count as open in one of several separations; none of them is narrower than `from` mm. */
export interface Exemptions {
  readonly each: readonly IsExempt[];
  readonly from: number;
}

export const noExemption: Exemptions = { each: [() => false], from: Infinity };

/**
 * @param gaps in ascending order of width; between any two parts nearer than the widest disc of interest
 * @param points where discs stand; none of them inside a solid
 * @param sources indices into `points`: where discs come from
 *
 * Parts grown by half a width are convex, so loops of gaps carry every loop round their union (nerve theorem):
 * a point is cut off from a source just when some loop goes round one of the two and not the other.
 */
export function separate(parts: readonly Part[], gaps: readonly Gap[], points: readonly Point[], sources: readonly number[]): Separation {
  const [separation] = separateEach(parts, gaps, points, sources, noExemption);
  return separation as Separation;
}

/** The same once for each exemption; what they have in common is done once. */
export function separateEach(
  parts: readonly Part[],
  gaps: readonly Gap[],
  points: readonly Point[],
  sources: readonly number[],
  { each, from }: Exemptions,
): Separation[] {
  const forest = new ParityForest(parts.length, points);
  const cuts = sources.map((source) => new Cut(forest.order, forest.order.indexOf(source), points.length));
  // Side by side: each is asked for once for every gap of its part.
  const hubs = space.lengths('hubs', 2 * parts.length);
  for (let k = 0; k < parts.length; k++) {
    const { hub } = parts[k] as Part;
    hubs[2 * k] = hub.x;
    hubs[2 * k + 1] = hub.y;
  }
  const close = (start: number, until: number, isExempt: IsExempt | null): number => {
    for (let k = start; k < gaps.length; k++) {
      const gap = gaps[k] as Gap;
      if (gap.width >= until) return k;
      if (isExempt?.(gap)) continue;
      const { i, j, ax, ay, bx, by } = gap;
      workDone.links++;
      forest.startLink();
      forest.addPath(hubs[2 * i] as number, hubs[2 * i + 1] as number, ax, ay);
      forest.addPath(ax, ay, bx, by);
      forest.addPath(bx, by, hubs[2 * j] as number, hubs[2 * j + 1] as number);
      if (!forest.closeLoop(i, j)) continue;
      let isOpen = false;
      for (const one of cuts) isOpen = one.close(forest, gap) || isOpen;
      if (!isOpen) return gaps.length;
    }
    return gaps.length;
  };
  const common = close(0, from, null);
  if (each.length > 1) {
    forest.mark();
    for (const one of cuts) one.mark();
  }
  return each.map((isExempt, k) => {
    if (k > 0) {
      forest.backToMark();
      for (const one of cuts) one.backToMark();
    }
    close(common, Infinity, isExempt);
    return cuts.map((one) => one.by);
  });
}

/** What is cut off from one source so far. */
class Cut {
  by: (Gap | null)[];
  private readonly dead: Uint32Array;
  private left: number;
  private marked: { readonly by: readonly (Gap | null)[]; readonly dead: Uint32Array; readonly left: number } | null = null;

  /** @param order the points from left to right @param source where among them it stands */
  constructor(
    private readonly order: Int32Array,
    private readonly source: number,
    pointCount: number,
  ) {
    this.by = new Array<Gap | null>(pointCount).fill(null);
    this.dead = new Uint32Array(Math.max(1, (pointCount + 31) >>> 5));
    this.left = pointCount - 1;
  }

  mark(): void {
    this.marked = { by: [...this.by], dead: this.dead.slice(), left: this.left };
  }

  /** As it was at the mark; what was told since stays with whom it was told to. */
  backToMark(): void {
    if (!this.marked) return;
    this.by = [...this.marked.by];
    this.dead.set(this.marked.dead);
    this.left = this.marked.left;
  }

  /** Marks what a loop cuts off; false when nothing is left to cut off. */
  close({ loop, from, to }: ParityForest, gap: Gap): boolean {
    if (this.left === 0) return false;
    const isRoundSource = ((loop[this.source >>> 5] as number) >>> (this.source & 31)) & 1;
    const { by, dead, order } = this;
    const flip = isRoundSource ? 0xffff_ffff : 0;
    const past = isRoundSource ? loop.length : to;
    for (let w = isRoundSource ? 0 : from; w < past; w++) {
      let fresh = (((loop[w] as number) ^ flip) & ~(dead[w] as number)) >>> 0;
      if (fresh === 0) continue;
      dead[w] = (dead[w] as number) | fresh;
      while (fresh !== 0) {
        const bit = 31 - Math.clz32(fresh);
        fresh = (fresh & ~(1 << bit)) >>> 0;
        const place = w * 32 + bit;
        if (place >= by.length) continue;
        by[order[place] as number] = gap;
        this.left--;
      }
    }
    return this.left > 0;
  }
}
