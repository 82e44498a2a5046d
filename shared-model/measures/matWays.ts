import { boxHolds, coreOf, type FrameBox, type PackingCell, ringOf } from '../geometry/packingCells.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { Tile } from '../geometry/tile.ts';
import { turn } from '../geometry/vec.ts';
import type { WaysKeeper } from './waysKeep.ts';

/** A box of floor that is taken for standing, in its frame and on the plan. */
export interface Taken {
  readonly box: FrameBox;
  /** degrees */
  readonly frame: number;
  readonly ring: Polygon;
}

/** Steps by which a side of a box is drawn in: to an eighth of its size. */
const HALVINGS = 3;
/** mm that a way has to lose before it counts as shut: well above what ways are exact to. */
const SURELY = 0.05;
/** mm: a box is not drawn in further than to this. */
const THIN = 1;

const taken = (box: FrameBox, frame: number): Taken => ({ box, frame, ring: ringOf(box, frame) });

/** What every mat of the cell covers; null: nothing. */
export function coveredBy(cell: PackingCell, tile: Tile): Taken | null {
  const box = coreOf(cell, tile, 0);
  return box && taken(box, cell.frame);
}

/** True when every mat of the cell covers all of it. */
export function covers(cell: PackingCell, tile: Tile, { ring }: Taken): boolean {
  const box = coreOf(cell, tile, 0);
  return box !== null && ring.every((p) => boxHolds(box, turn(p, -cell.frame)));
}

/** What mats may not cover together, for the sake of the ways. More on the floor never widens a way: so it holds of whatever covers as much. */
export class MatWays {
  /** How often the ways were asked. */
  asked = 0;

  constructor(private readonly keeper: WaysKeeper) {}

  shuts(parts: readonly Taken[]): boolean {
    this.asked++;
    return !this.keeper.keeps(
      parts.map(({ ring }) => ring),
      SURELY,
    );
  }

  keeps(rings: readonly Polygon[]): boolean {
    this.asked++;
    return this.keeper.keeps(rings);
  }

  /** Of parts that shut a way together: some of which none can be left out, drawn in as far as they still shut it, and these parts as they were. */
  least(parts: readonly Taken[]): { readonly from: readonly Taken[]; readonly drawnIn: readonly Taken[] } {
    let from = [...parts];
    for (const part of parts) {
      const fewer = from.filter((other) => other !== part);
      if (this.shuts(fewer)) from = fewer;
    }
    const drawnIn = [...from];
    from.forEach((part, i) => {
      drawnIn[i] = this.drawIn(
        part,
        drawnIn.filter((_, k) => k !== i),
      );
    });
    return { from, drawnIn };
  }

  private drawIn(part: Taken, others: readonly Taken[]): Taken {
    let best = part;
    for (const side of ['minU', 'maxU', 'minV', 'maxV'] as const) {
      const { box } = best;
      const toMax = side === 'minU' || side === 'minV';
      const far = toMax ? box[side === 'minU' ? 'maxU' : 'maxV'] - THIN : box[side === 'maxU' ? 'minU' : 'minV'] + THIN;
      let good = box[side];
      if (toMax ? far <= good : far >= good) continue;
      const shutsAt = (value: number): boolean => this.shuts([...others, taken({ ...box, [side]: value }, part.frame)]);
      if (shutsAt(far)) {
        best = taken({ ...box, [side]: far }, part.frame);
        continue;
      }
      let bad = far;
      for (let step = 0; step < HALVINGS; step++) {
        const middle = (good + bad) / 2;
        if (shutsAt(middle)) good = middle;
        else bad = middle;
      }
      best = taken({ ...box, [side]: good }, part.frame);
    }
    return best;
  }
}
