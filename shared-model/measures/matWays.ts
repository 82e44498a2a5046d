import { boxHolds, coreOf, type FrameBox, type PackingCell, ringOf } from '../geometry/packingCells.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { shuffled } from '../geometry/seededRandom.ts';
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

/**
 * Boxes of floor of which any stands for the others. No two mats cover one of them each: they lie nearer to one another than
 * mats do.
 */
export type Alike = readonly Taken[];

type BoxSide = keyof FrameBox;
/** The sides of a box, in the order in which they are drawn in where nothing else is said. */
export const SIDES: readonly BoxSide[] = ['minU', 'maxU', 'minV', 'maxV'];
/** Steps by which a side of a box is drawn in: to an eighth of its size. */
const HALVINGS = 3;
/** mm that a way has to lose before it counts as shut: well above what ways are exact to. */
const SURELY = 0.05;
/** mm: a box is not drawn in further than to this. */
const THIN = 1;
/** mm: boxes that are alike lie nearer by this than mats may. */
const SAFELY = 1;
/** mm: a box this near to another says little more. */
const LITTLE = 20;
/** Where boxes alike are looked for, u and v: as far off as they may lie, then half as far. */
const AHEAD: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];
const FAR = [1, 0.5];
/** Ways of taking one of each of the others with which a box is asked, at most. */
const MOST_SETS = 64;

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

  /**
   * For each of parts that shut a way together, boxes beside it that do so as well in its place, whichever are taken of the others.
   * @param gap mm between two mats
   * @param isOneFrame all mats lie at one turn and a quarter turn to it
   */
  widened(parts: readonly Taken[], { gap, isOneFrame }: { gap: number; isOneFrame: boolean }, random: () => number): readonly Alike[] {
    const groups: Taken[][] = parts.map((part) => [part]);
    const isBeside = (p: Taken, q: Taken): boolean =>
      apart(p.box, q.box, isOneFrame) < gap - SAFELY && !(p.box.minU === q.box.minU && p.box.minV === q.box.minV);
    groups.forEach((group, i) => {
      const sets = oneOfEach(groups.filter((_, k) => k !== i));
      if (sets.length > MOST_SETS) return;
      for (const [du, dv] of shuffled(AHEAD, random))
        for (const share of FAR) {
          const by = (gap - 2 * SAFELY) * share;
          if (by < LITTLE) break;
          const beside = group
            .map(({ box, frame }) => taken(shifted(box, du * by, dv * by), frame))
            .filter((one) => group.every((other) => isBeside(one, other)) && sets.every((set) => this.shuts([...set, one])));
          if (beside.length === 0) continue;
          group.push(...beside);
          break;
        }
    });
    return groups;
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

const shifted = ({ minU, maxU, minV, maxV }: FrameBox, du: number, dv: number): FrameBox => ({
  minU: minU + du,
  maxU: maxU + du,
  minV: minV + dv,
  maxV: maxV + dv,
});

/** mm from one box of a frame to another: along the axis in which they lie farther apart, or straight. */
function apart(p: FrameBox, q: FrameBox, isAlongAxes: boolean): number {
  const u = Math.max(0, q.minU - p.maxU, p.minU - q.maxU);
  const v = Math.max(0, q.minV - p.maxV, p.minV - q.maxV);
  return isAlongAxes ? Math.max(u, v) : Math.hypot(u, v);
}

const oneOfEach = (groups: readonly Alike[]): Taken[][] =>
  groups.reduce<Taken[][]>((sets, group) => sets.flatMap((set) => group.map((one) => [...set, one])), [[]]);
