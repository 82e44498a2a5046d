import { packRefill } from '../geometry/packingRefill.ts';
import type { Picker } from '../geometry/pickMost.ts';
import { seededRandom } from '../geometry/seededRandom.ts';
import { type TilePlace, tileRing } from '../geometry/tile.ts';
import type { Scene } from '../scene/types.ts';
import { matFloor, matTurns } from './floor.ts';
import { MatCells, type MatWindow } from './matCells.ts';
import { MatLimits } from './matLimits.ts';
import { type MatGround, type Settled, settle } from './matSettle.ts';
import { type Mats, measureMats } from './mats.ts';
import { MatWays } from './matWays.ts';
import { matWindows } from './matWindows.ts';
import type { SeatStrip } from './seats.ts';
import { waysKeeper } from './waysKeep.ts';

/** How far the proof is. */
export interface MatProofStep {
  /** What is known by now. */
  readonly mats: Mats;
  readonly round: number;
  readonly rounds: number;
}

export interface MatProofOptions {
  readonly pick: Picker;
  /** Rounds after which it is left as it is: the work that is spent, counted, never timed. */
  readonly rounds?: number;
  /** True: the time is over, and the search before the proof ends; later on it is for whoever steps to stop. */
  readonly isOver?: () => boolean;
  /** What an earlier proof of the same room found: its bounds hold, and are where this one begins. */
  readonly known?: Mats | null;
}

const ROUNDS = 80;
/** Of the better search, before the proof begins. */
const SEARCH_EFFORT = 4;
/** Questions to the ways for each mat that is open then, up to so many of those. */
const REFILL_QUESTIONS = 14_000;
const MOST_OPEN = 3;
/** Rounds for the whole floor before its parts are looked at. */
const FIRST_ROUNDS = 4;
/** mm: cells this small are not cut further. */
const LAST_SIZE = 2;
/** Of the solver's search for one question. */
const NODES = 32_000;
const WINDOW_NODES = 2000;
/** Of a part of the floor: what it holds need not be told to the last. */
const WINDOW_ROUNDS = 6;
const WINDOW_LAST_SIZE = 160;
const SEED = 5;

/**
 * Proves how many mats lie at once with every way kept, for places anywhere (not on a raster) at the turns of `matTurns`.
 *
 * Places are looked at in cells. What every mat of a cell covers, a little less than a mat, cannot be shared by two; and
 * where it shuts a way by itself, the cell is out. What shuts a way together with others (parts drawn in as far as they
 * still do, each with those beside it that do as well in its place) is no choice for whatever covers as much. What these
 * limits tell of pairs makes wider ones of them (`PairsApart`). So where no choice of so many cells keeps them (linear
 * programme, then the mixed-integer one), so many mats do not lie. Where a choice can be laid it is a better count; where
 * it cannot, its cells are cut smaller. If a few rounds do not settle it, small parts of the floor are settled first: what
 * each holds at most limits the whole. The same room gives the same answer on every device.
 *
 * @returns null where the walls do not hold
 */
export function* proveMats(scene: Scene, strips: readonly SeatStrip[], options: MatProofOptions): Generator<MatProofStep, Mats | null> {
  const first = withKnown(measureMats(scene, strips, 'quick', undefined, options.isOver), options.known ?? null);
  if (!first || first.proven) return first;
  // Whoever asked sees at once how far it is; the search takes seconds.
  yield { mats: first, round: 0, rounds: options.rounds ?? ROUNDS };
  const found = withKnown(measureMats(scene, strips, SEARCH_EFFORT, undefined, options.isOver), first);
  if (!found || found.proven) return found;
  const proof = new MatProof(scene, strips, found, options);
  yield* proof.run();
  return proof.mats;
}

/** The better of both bounds. */
function withKnown(found: Mats | null, known: Mats | null): Mats | null {
  if (!found || !known) return found;
  const laid = known.count > found.count ? known : found;
  const upperBound = Math.max(laid.count, Math.min(found.upperBound, known.upperBound));
  return { ...laid, upperBound, proven: laid.count === upperBound };
}

class MatProof {
  private readonly ground: MatGround;
  private readonly rounds: number;
  private windows: readonly MatWindow[] = [];
  private round = 0;

  constructor(
    private readonly scene: Scene,
    private readonly strips: readonly SeatStrip[],
    public mats: Mats,
    { pick, rounds = ROUNDS }: MatProofOptions,
  ) {
    const { tile } = mats;
    const ways = new MatWays(waysKeeper(scene));
    const cells = new MatCells(tile, ways);
    this.ground = { tile, cells, limits: new MatLimits(tile, cells), ways, pick, random: seededRandom(SEED) };
    this.rounds = rounds;
  }

  *run(): Generator<MatProofStep> {
    const { cells } = this.ground;
    yield this.step();
    const turns = matTurns(this.scene, Math.min(this.mats.tile.width, this.mats.tile.depth));
    for (const _ of cells.lookAt(matFloor(this.scene, this.strips), turns)) yield this.step();
    const middles = cells.middles();
    const whole: MatWindow = new Set(middles.keys());
    this.round = 1;
    yield* this.settleWhole(whole, Math.min(FIRST_ROUNDS, this.rounds));
    if (this.mats.proven || this.rounds <= FIRST_ROUNDS) return;
    yield* this.searchOn(turns);
    this.windows = matWindows(middles);
    yield* this.settleWindows();
    yield* this.settleWhole(whole, this.rounds - FIRST_ROUNDS);
  }

  private *settleWhole(whole: MatWindow, rounds: number): Generator<MatProofStep> {
    const start = this.round;
    const from = { places: this.mats.places, most: this.mats.upperBound, round: 0 };
    for (const settled of settle(this.ground, whole, from, { rounds, lastSize: LAST_SIZE, nodes: NODES })) {
      this.round = start + settled.round;
      this.know(settled.places, settled.most);
      yield this.step();
    }
  }

  /** Small parts of the floor are quickly told, and what they hold limits the larger ones. */
  private *settleWindows(): Generator<MatProofStep> {
    const { ground } = this;
    const laid: (readonly TilePlace[])[] = [];
    for (const window of this.windows) {
      const known = [this.mats.places, ...laid].map((places) => ground.cells.placesIn(window, places));
      const places = known.reduce((p, q) => (q.length > p.length ? q : p));
      let now: Settled = { places, most: this.mats.upperBound, round: 0 };
      for (now of settle(ground, window, now, { rounds: WINDOW_ROUNDS, lastSize: WINDOW_LAST_SIZE, nodes: WINDOW_NODES })) {
        this.know(now.places, this.mats.upperBound);
        yield this.step();
      }
      ground.limits.atMost(window, now.most);
      laid.push(now.places);
      this.round++;
    }
  }

  /** Where the first rounds leave something open, a longer search is worth its time: the more is open, the longer. */
  private *searchOn(turns: readonly number[]): Generator<MatProofStep> {
    const { tile, count, upperBound, places } = this.mats;
    const { ways } = this.ground;
    const questions = REFILL_QUESTIONS * Math.min(MOST_OPEN, upperBound - count);
    const isAllowed = (laid: readonly TilePlace[]): boolean => ways.keeps(laid.map((place) => tileRing(tile, place)));
    const floor = matFloor(this.scene, this.strips);
    for (const best of packRefill({ floor, tile, turns, most: upperBound, isAllowed, questions, seed: SEED, start: places })) {
      this.know(best, upperBound);
      yield this.step();
    }
  }

  private know(places: readonly TilePlace[], most: number): void {
    const better = places.length > this.mats.count ? places : this.mats.places;
    const upperBound = Math.max(better.length, Math.min(this.mats.upperBound, most));
    this.mats = { ...this.mats, places: better, count: better.length, upperBound, proven: better.length === upperBound };
  }

  private step(): MatProofStep {
    return { mats: this.mats, round: this.round, rounds: this.rounds + this.windows.length };
  }
}
