import { coreOf, cut, type PackingCell, packingCells } from '../geometry/packingCells.ts';
import { cliquesOf } from '../geometry/packingCliques.ts';
import type { PickLimit, PickMost } from '../geometry/pickMost.ts';
import { type Tile, type TilePlace, tileRing } from '../geometry/tile.ts';
import type { Scene } from '../scene/types.ts';
import { matFloor, matTurns } from './floor.ts';
import { layInCells } from './layInCells.ts';
import { type Mats, measureMats } from './mats.ts';
import { coveredBy, covers, MatWays, type Taken } from './matWays.ts';
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
  readonly pick: PickMost;
  /** Rounds after which it is left as it is: the work that is spent, counted, never timed. */
  readonly rounds?: number;
  /** What an earlier proof of the same room found: its bounds hold, and are where this one begins. */
  readonly known?: Mats | null;
}

const ROUNDS = 80;
/** Of the better search, before the proof begins; and where the proof left something open. */
const SEARCH_EFFORT = 4;
const LAST_EFFORT = 32;
/** mm: the first cells; floors so large that they would be more than MOST_CELLS begin with larger ones. */
const FIRST_SIZE = 300;
const MOST_CELLS = 1200;
/** mm: cells this small are not cut further. */
const LAST_SIZE = 2;
const NODES = 2000;
/** Ways found shut in one choice, at most. */
const CUTS_A_ROUND = 6;
/** Single questions between two words of how far it is. */
const TELL_EVERY = 50;

/**
 * Proves how many mats lie at once with every way kept, for places anywhere (not on a raster) at the turns of `matTurns`.
 *
 * Places are looked at in cells. What every mat of a cell covers, a little less than a mat, cannot be shared by two; and
 * where it shuts a way by itself, the cell is out. What shuts a way together with others (parts drawn in as far as they
 * still do) is no choice for whatever covers as much. So the largest choice of cells within these limits (mixed-integer
 * programme) is never below the number of mats. Where one such choice can be laid it is a better count; where it cannot,
 * its cells are cut smaller. The same room gives the same answer on every device.
 *
 * @returns null where the walls do not hold
 */
export function* proveMats(scene: Scene, strips: readonly SeatStrip[], options: MatProofOptions): Generator<MatProofStep, Mats | null> {
  const found = withKnown(measureMats(scene, strips, SEARCH_EFFORT), options.known ?? null);
  if (!found || found.proven) return found;
  const proof = new MatProof(scene, strips, found, options);
  yield* proof.run();
  const { mats } = proof;
  if (mats.proven) return mats;
  const more = measureMats(scene, strips, LAST_EFFORT);
  if (!more || more.count <= mats.count) return mats;
  return { ...more, upperBound: mats.upperBound, proven: more.count === mats.upperBound };
}

/** The better of both bounds. */
function withKnown(found: Mats | null, known: Mats | null): Mats | null {
  if (!found || !known) return found;
  const laid = known.count > found.count ? known : found;
  const upperBound = Math.max(laid.count, Math.min(found.upperBound, known.upperBound));
  return { ...laid, upperBound, proven: laid.count === upperBound };
}

class MatProof {
  private cells: PackingCell[] = [];
  /** Cells that shut no way by themselves. */
  private readonly passed = new WeakSet<PackingCell>();
  /** What shuts a way, each part drawn in: first by itself, then together. */
  private readonly alone: Taken[] = [];
  private readonly together: (readonly Taken[])[] = [];
  private readonly ways: MatWays;
  private readonly tile: Tile;
  private round = 0;
  private readonly rounds: number;
  private readonly pick: PickMost;

  constructor(
    private readonly scene: Scene,
    private readonly strips: readonly SeatStrip[],
    public mats: Mats,
    { pick, rounds = ROUNDS }: MatProofOptions,
  ) {
    this.tile = mats.tile;
    this.ways = new MatWays(waysKeeper(scene));
    this.rounds = rounds;
    this.pick = pick;
  }

  *run(): Generator<MatProofStep> {
    yield this.step();
    yield* this.keepPassing(this.firstCells());
    for (this.round = 1; this.round <= this.rounds && !this.mats.proven; this.round++) {
      const chosen = this.choose();
      yield this.step();
      if (!chosen || this.mats.proven) return;
      const isLimited = this.limitWays(chosen);
      if (isLimited || this.layIn(chosen)) continue;
      const size = sizeOf(chosen);
      if (size <= LAST_SIZE) return;
      const isChosen = new Set(chosen);
      yield* this.keepPassing(this.cells.flatMap((cell) => (isChosen.has(cell) ? cut(cell, size / 2) : [cell])));
    }
  }

  private step(): MatProofStep {
    return { mats: this.mats, round: this.round, rounds: this.rounds };
  }

  private firstCells(): PackingCell[] {
    const turns = matTurns(this.scene, Math.min(this.tile.width, this.tile.depth));
    const floor = matFloor(this.scene, this.strips);
    for (let size = FIRST_SIZE; ; size *= 1.5) {
      const cells = packingCells(floor, this.tile, turns, size);
      if (cells.length <= MOST_CELLS) return cells;
    }
  }

  private *keepPassing(cells: readonly PackingCell[]): Generator<MatProofStep> {
    const kept: PackingCell[] = [];
    let told = this.ways.asked;
    for (const cell of cells) {
      if (this.passes(cell)) kept.push(cell);
      if (this.ways.asked < told + TELL_EVERY) continue;
      told = this.ways.asked;
      yield this.step();
    }
    this.cells = kept;
  }

  private passes(cell: PackingCell): boolean {
    if (this.passed.has(cell)) return true;
    if (this.alone.some((part) => covers(cell, this.tile, part))) return false;
    const core = coveredBy(cell, this.tile);
    if (core && this.ways.shuts([core])) {
      this.alone.push(...this.ways.least([core]).drawnIn);
      return false;
    }
    this.passed.add(cell);
    return true;
  }

  /** The largest choice of cells; null: there is none that is larger than what lies already. */
  private choose(): PackingCell[] | null {
    const { cells, tile, mats } = this;
    const cores = cells.map((cell) => {
      const box = coreOf(cell, tile, tile.gap / 2);
      return box && { ...box, frame: cell.frame };
    });
    const limits: PickLimit[] = cliquesOf(cores).map((members) => ({ members, most: 1 }));
    for (const parts of this.together) {
      const members = cells.flatMap((cell, k) => (parts.some((part) => covers(cell, tile, part)) ? [k] : []));
      if (members.length >= parts.length) limits.push({ members, most: parts.length - 1 });
    }
    const { members, bound } = this.pick({ count: cells.length, limits, atLeast: mats.count + 1, nodes: NODES });
    const upperBound = Math.max(mats.count, Math.min(mats.upperBound, bound));
    this.mats = { ...mats, upperBound, proven: upperBound === mats.count };
    return members?.flatMap((k) => cells[k] ?? []) ?? null;
  }

  /** Finds what of the choice shuts ways; true: something did. What of it shuts none may be laid. */
  private limitWays(chosen: readonly PackingCell[]): boolean {
    const cellOf = new Map<Taken, PackingCell>();
    for (const cell of chosen) {
      const core = coveredBy(cell, this.tile);
      if (core) cellOf.set(core, cell);
    }
    let rest = [...cellOf.keys()];
    let count = 0;
    while (count < CUTS_A_ROUND && this.ways.shuts(rest)) {
      const { from, drawnIn } = this.ways.least(rest);
      this.together.push(drawnIn);
      const out = from[count++ % from.length];
      rest = rest.filter((part) => part !== out);
    }
    if (count > 0 && rest.length > this.mats.count) this.layIn(rest.flatMap((part) => cellOf.get(part) ?? []));
    return count > 0;
  }

  /** Lays one mat in each cell where that can be found. */
  private layIn(cells: readonly PackingCell[]): boolean {
    const { tile, mats } = this;
    const isAllowed = (places: readonly TilePlace[]): boolean => this.ways.keeps(places.map((place) => tileRing(tile, place)));
    const places = layInCells(cells, tile, isAllowed);
    if (!places || places.length <= mats.count) return false;
    this.mats = { ...mats, count: places.length, places, proven: places.length === mats.upperBound };
    return true;
  }
}

const sizeOf = (cells: readonly PackingCell[]): number => Math.max(...cells.map((c) => Math.max(c.maxU - c.minU, c.maxV - c.minV)));
