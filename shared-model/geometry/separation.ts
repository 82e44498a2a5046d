import type { Gap } from './gaps.ts';
import { ParityForest } from './parityForest.ts';
import type { Part } from './parts.ts';
import type { Point } from './vec.ts';

/**
 * Which gap first cuts each point off from each source, when gaps close in ascending order of width.
 * `points[k]` for `source` s: the gap, or null when nothing among the gaps cuts it off.
 */
export type Separation = readonly (readonly (Gap | null)[])[];

/**
 * @param gaps in ascending order of width; between any two parts nearer than the widest disc of interest
 * @param points where discs stand; none of them inside a solid
 * @param sources indices into `points`: where discs come from
 *
 * Parts grown by half a width are convex, so loops of gaps carry every loop round their union (nerve theorem):
 * a point is cut off from a source just when some loop goes round one of the two and not the other.
 */
export function separate(parts: readonly Part[], gaps: readonly Gap[], points: readonly Point[], sources: readonly number[]): Separation {
  const forest = new ParityForest(parts.length, points);
  const cut = sources.map((source) => new Cut(source, points.length));
  for (const gap of gaps) {
    const p = (parts[gap.i] as Part).hub;
    const q = (parts[gap.j] as Part).hub;
    forest.startLink();
    forest.addPath(p.x, p.y, gap.ax, gap.ay);
    forest.addPath(gap.ax, gap.ay, gap.bx, gap.by);
    forest.addPath(gap.bx, gap.by, q.x, q.y);
    if (!forest.closeLoop(gap.i, gap.j)) continue;
    let isOpen = false;
    for (const one of cut) isOpen = one.close(forest.loop, gap) || isOpen;
    if (!isOpen) break;
  }
  return cut.map((one) => one.by);
}

/** What is cut off from one source so far. */
class Cut {
  readonly by: (Gap | null)[];
  private readonly dead: Uint32Array;
  private left: number;

  constructor(
    private readonly source: number,
    pointCount: number,
  ) {
    this.by = new Array<Gap | null>(pointCount).fill(null);
    this.dead = new Uint32Array(Math.max(1, (pointCount + 31) >>> 5));
    this.left = pointCount - 1;
  }

  /** Marks what a loop cuts off; false when nothing is left to cut off. */
  close(loop: Uint32Array, gap: Gap): boolean {
    if (this.left === 0) return false;
    const isRoundSource = ((loop[this.source >>> 5] as number) >>> (this.source & 31)) & 1;
    const flip = isRoundSource ? 0xffff_ffff : 0;
    for (let w = 0; w < loop.length; w++) {
      let fresh = (((loop[w] as number) ^ flip) & ~(this.dead[w] as number)) >>> 0;
      if (fresh === 0) continue;
      this.dead[w] = (this.dead[w] as number) | fresh;
      while (fresh !== 0) {
        const bit = 31 - Math.clz32(fresh);
        fresh = (fresh & ~(1 << bit)) >>> 0;
        const point = w * 32 + bit;
        if (point >= this.by.length) continue;
        this.by[point] = gap;
        this.left--;
      }
    }
    return this.left > 0;
  }
}
