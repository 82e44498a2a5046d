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

type BoxSide = keyof FrameBox;
/** The sides of a box, in the order in which they are drawn in where nothing else is said. */
export const SIDES: readonly BoxSide[] = ['minU', 'maxU', 'minV', 'maxV'];
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

  /** Of parts that shut a way together: some of which none can be left out. Those that come first are tried to be left out first. */
  least(parts: readonly Taken[]): readonly Taken[] {
    let from = parts;
    for (const part of parts) {
      const fewer = from.filter((other) => other !== part);
      if (this.shuts(fewer)) from = fewer;
    }
    return from;
  }

  /** Parts that shut a way together drawn in one after the other, as far as they still do. */
  drawnIn(parts: readonly Taken[], sides: readonly BoxSide[] = SIDES): readonly Taken[] {
    const drawn = [...parts];
    parts.forEach((part, i) => {
      drawn[i] = this.drawIn(
        part,
        drawn.filter((_, k) => k !== i),
        sides,
      );
    });
    return drawn;
  }

  private drawIn(part: Taken, others: readonly Taken[], sides: readonly BoxSide[]): Taken {
    let best = part;
    for (const side of sides) {
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
