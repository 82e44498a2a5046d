import type { PackingCell } from '../geometry/packingCells.ts';
import { PairsApart } from '../geometry/pairsApart.ts';
import type { Picker, PickLimit } from '../geometry/pickMost.ts';
import { shuffled } from '../geometry/seededRandom.ts';
import { type Tile, type TilePlace, tileRing } from '../geometry/tile.ts';
import { layInCells } from './layInCells.ts';
import type { MatCells, MatWindow } from './matCells.ts';
import { drawChoice } from './matDraws.ts';
import type { MatLimits } from './matLimits.ts';
import { type Alike, coveredBy, type MatWays, SIDES, type Taken } from './matWays.ts';

/** What a proof works with. */
export interface MatGround {
  readonly tile: Tile;
  readonly cells: MatCells;
  readonly limits: MatLimits;
  readonly ways: MatWays;
  readonly pick: Picker;
  readonly random: () => number;
}

/** How many mats lie in a window at once, as far as is known. */
export interface Settled {
  /** At least these. */
  readonly places: readonly TilePlace[];
  /** At most so many. */
  readonly most: number;
  readonly round: number;
}

interface SettleOptions {
  readonly rounds: number;
  /** mm: cells this small are not cut further. */
  readonly lastSize: number;
  /** Of the search behind one question, at most. */
  readonly nodes: number;
}

/** Nodes of the search at first, and by how many times more where they did not settle it. */
const NODES = 2000;
const MORE_NODES = 4;
const MOST_AVOIDED = 20;
/** How often the limits are asked in parts, at most; and how often with nothing gained. */
const PART_ROUNDS = 120;
const IDLE_ROUNDS = 3;
/** Choices drawn from each answer in parts. */
const DRAWS = 12;
/** Ways found shut in one draw, and ways of telling what shuts them in one choice of whole cells, at most. */
const CUTS_A_DRAW = 3;
const CUTS_A_CHOICE = 8;
/** In how many ways what shuts a way is drawn in. */
const DRAWN_IN = 5;
/** What a limit has to cut off of an answer in parts to be kept. */
const WORTH = 1e-3;
const GAIN = 0.02;

/** Closes in on how many mats lie in a window; yields what is known by then. Limits found on the way hold of the whole floor. */
export function* settle(ground: MatGround, window: MatWindow, from: Settled, options: SettleOptions): Generator<Settled> {
  const settling = new Settling(ground, window, from, options);
  yield* settling.run();
  yield settling.settled();
}

class Settling {
  private places: readonly TilePlace[];
  private most: number;
  private round: number;

  constructor(
    private readonly ground: MatGround,
    private readonly window: MatWindow,
    from: Settled,
    private readonly options: SettleOptions,
  ) {
    this.places = from.places;
    this.most = from.most;
    this.round = from.round;
  }

  settled(): Settled {
    return { places: this.places, most: this.most, round: this.round };
  }

  private lower(most: number): void {
    this.most = Math.max(this.places.length, Math.min(this.most, most));
  }

  private isDone(): boolean {
    return this.places.length >= this.most;
  }

  *run(): Generator<Settled> {
    const { ground, window, options } = this;
    let isFresh = true;
    let nodes = NODES;
    /** Choices in cells that are not cut further, which could not be laid: others are tried, of which nothing follows for the most. */
    const avoided: (readonly PackingCell[])[] = [];
    for (; this.round < options.rounds && !this.isDone(); this.round++) {
      const cells = ground.cells.of(window);
      this.lower(cells.length);
      if (this.isDone()) return;
      const pairs = new PairsApart(cells.length);
      const limits = ground.limits.of(cells);
      for (const limit of limits) pairs.add(limit);
      if (isFresh) yield* this.inParts(cells, limits, pairs);
      isFresh = false;
      if (this.isDone()) return;
      const asked = this.most;
      const others = avoided.map((chosen) => ({ members: indicesOf(chosen, cells), most: chosen.length - 1 }));
      const { members, bound } = ground.pick.enough({
        count: cells.length,
        limits: [...pairs.widened(limits), ...others],
        atLeast: asked,
        nodes,
      });
      if (others.length === 0) this.lower(bound);
      yield this.settled();
      if (this.isDone()) return;
      if (!members) {
        if (this.most < asked) continue;
        if (others.length > 0 || nodes >= options.nodes) return;
        nodes *= MORE_NODES;
        continue;
      }
      const chosen = members.flatMap((k) => cells[k] ?? []);
      if (this.forbidIn(chosen) || this.layIn(chosen)) continue;
      const size = sizeOf(chosen);
      if (size <= options.lastSize) {
        if (avoided.push(chosen) > MOST_AVOIDED) return;
        continue;
      }
      for (const _ of ground.cells.cut(chosen, size / 2)) yield this.settled();
      isFresh = true;
    }
  }

  /** Forbids what choices drawn from the best choice in parts would shut, for as long as that lowers it; adds to the limits. */
  private *inParts(cells: readonly PackingCell[], limits: PickLimit[], pairs: PairsApart): Generator<Settled> {
    const { pick } = this.ground;
    const cores = cells.map((cell) => coveredBy(cell, this.ground.tile));
    const parts = pick.parts(cells.length, pairs.widened(limits));
    try {
      let least = Infinity;
      for (let round = 0, idle = 0; round < PART_ROUNDS && idle < IDLE_ROUNDS; round++) {
        const { shares, bound } = parts.solve();
        this.lower(bound);
        yield this.settled();
        if (this.isDone()) return;
        const total = shares.reduce((sum, share) => sum + share, 0);
        idle = total > least - GAIN ? idle + 1 : 0;
        least = Math.min(least, total);
        const before = limits.length;
        limits.push(...pairs.brokenBy(shares, WORTH));
        for (let draw = 0; draw < DRAWS; draw++) if (this.forbidOne(cells, cores, shares, limits)) idle = 0;
        if (limits.length === before) return;
        const fresh = limits.slice(before);
        for (const limit of fresh) pairs.add(limit);
        parts.add(fresh);
      }
    } finally {
      parts.end();
    }
  }

  /**
   * Draws a choice and forbids what of it shuts ways, where that cuts off the shares, or where the choice is as large as
   * any; true: it was.
   */
  private forbidOne(cells: readonly PackingCell[], cores: readonly (Taken | null)[], shares: Float64Array, limits: PickLimit[]): boolean {
    const { random, ways } = this.ground;
    const shareOf = new Map<Taken, number>();
    const drawn = drawChoice(shares, limits, random);
    const isLargest = drawn.length >= this.most;
    let isForbidden = false;
    for (const k of drawn) {
      const core = cores[k];
      if (core) shareOf.set(core, shares[k] as number);
    }
    // What has little share is tried to be left out first.
    let rest = [...shareOf].sort((p, q) => p[1] - q[1]).map(([part]) => part);
    for (let count = 0; count < CUTS_A_DRAW && ways.shuts(rest); count++) {
      const from = ways.least(rest);
      const limit = this.ground.limits.forbid(this.widened(ways.drawnIn(from)), cells);
      const taken = limit.members.reduce((sum, k) => sum + (shares[k] as number), 0);
      if (isLargest || taken > limit.most + WORTH) limits.push(limit);
      isForbidden = true;
      const out = from[Math.floor(random() * from.length)];
      rest = rest.filter((part) => part !== out);
    }
    return isLargest && isForbidden;
  }

  /** Forbids what of a choice of whole cells shuts ways; true: something did. What of it shuts none may be laid. */
  private forbidIn(chosen: readonly PackingCell[]): boolean {
    const { ways, tile, random, limits } = this.ground;
    const cellOf = new Map<Taken, PackingCell>();
    for (const cell of chosen) {
      const core = coveredBy(cell, tile);
      if (core) cellOf.set(core, cell);
    }
    if (!ways.shuts([...cellOf.keys()])) return false;
    const told = new Set<string>();
    const numbers = new Map([...cellOf.keys()].map((part, k) => [part, k]));
    let kept: readonly Taken[] = [];
    for (let turn = 0; turn < CUTS_A_CHOICE; turn++) {
      let rest = shuffled([...cellOf.keys()], random);
      while (ways.shuts(rest)) {
        const from = ways.least(rest);
        const key = from
          .map((part) => numbers.get(part) ?? 0)
          .sort((p, q) => p - q)
          .join();
        if (!told.has(key))
          for (let way = 0; way < DRAWN_IN; way++)
            limits.forbid(this.widened(ways.drawnIn(shuffled(from, random), shuffled(SIDES, random))), []);
        told.add(key);
        const out = from[Math.floor(random() * from.length)];
        rest = rest.filter((part) => part !== out);
      }
      if (rest.length > kept.length) kept = rest;
    }
    if (kept.length > this.places.length) this.layIn(kept.flatMap((part) => cellOf.get(part) ?? []));
    return true;
  }

  private widened(parts: readonly Taken[]): readonly Alike[] {
    const { ways, cells, tile, random } = this.ground;
    return ways.widened(parts, { gap: tile.gap, isOneFrame: cells.isOneFrame() }, random);
  }

  /** Lays one mat in each cell where that can be found. */
  private layIn(cells: readonly PackingCell[]): boolean {
    const { tile, ways } = this.ground;
    const places = layInCells(cells, tile, (laid) => ways.keeps(laid.map((place) => tileRing(tile, place))));
    if (!places || places.length <= this.places.length) return false;
    this.places = places;
    return true;
  }
}

const indicesOf = (some: readonly PackingCell[], cells: readonly PackingCell[]): number[] =>
  some.map((cell) => cells.indexOf(cell)).filter((k) => k >= 0);

const sizeOf = (cells: readonly PackingCell[]): number => Math.max(...cells.map((c) => Math.max(c.maxU - c.minU, c.maxV - c.minV)));
