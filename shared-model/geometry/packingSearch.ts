import { packRows } from './packingRows.ts';
import { type PackingFloor, PackingSpace } from './packingSpace.ts';
import { boundingBox, type Polygon } from './polygon.ts';
import { seededRandom } from './seededRandom.ts';
import type { Tile, TilePlace } from './tile.ts';

export interface PackingTask {
  readonly floor: PackingFloor;
  readonly tile: Tile;
  /** Turns of a tile's width from the plan's x axis, degrees; each is tried with a quarter turn more as well. */
  readonly turns: readonly number[];
  /** No more than this many will fit: stop there. */
  readonly most: number;
  /**
   * What else has to hold of tiles together: null where it holds, otherwise which of them seem to be in its way, the worst
   * first, or none where that is not known. Fewer tiles never break what more of them kept.
   */
  readonly inTheWay: (places: readonly TilePlace[]) => readonly number[] | null;
  /** Floor that is best kept free for that: a first guess, and others drawn at random. */
  readonly lanes: (random: (() => number) | null) => readonly Polygon[];
  /** How many such guesses are tried. */
  readonly guesses: number;
  /** How often `inTheWay` may be asked: the work that is spent, counted, never timed. */
  readonly questions: number;
  /** How often what lies round some place is laid anew, at most. */
  readonly rounds: number;
  /** True: the time is over, what is found by then is the answer. Without it, only the work that is counted ends the search. */
  readonly isOver?: () => boolean;
  readonly seed: number;
}

/** Of the tiles' greater pitch: how far round its middle a round takes tiles up and lays them anew. */
const LEAST_REACH = 0.45;
const MOST_REACH = 1.5;
/** Of tiles in the way: how many are tried to be taken out before another is looked for beside the first. */
const ALTERNATIVES = 2;

/**
 * Lays many tiles. First the best rows of each turn, kept tile by tile while the rest of the task allows; then, again and
 * again at a place drawn by the seed, what lies there is taken up and laid in other rows, and stays so when no fewer lie.
 * The same task gives the same places on every device.
 */
export function packSearch(task: PackingTask): TilePlace[] {
  const search = new Search(task);
  search.start();
  search.improve();
  return search.best;
}

class Search {
  best: TilePlace[] = [];
  private readonly spaces: PackingSpace[] = [];
  private readonly random: () => number;
  private left: number;

  constructor(private readonly task: PackingTask) {
    this.random = seededRandom(task.seed);
    this.left = task.questions;
  }

  /** Rows beside lanes, and, where there is time to ask for them or no lanes to keep, rows that mind no lanes. */
  start(): void {
    const { guesses, lanes } = this.task;
    let isLaned = false;
    for (let guess = 0; guess < guesses && this.left > 0 && !this.isDone(); guess++) {
      const drawn = lanes(guess === 0 ? null : this.random);
      if (drawn.length === 0) continue;
      isLaned = true;
      this.tryOut(this.layBeside(drawn, guess));
    }
    if ((guesses > 1 || !isLaned) && !this.isDone()) this.tryOut(this.bestRows());
  }

  private tryOut(laid: readonly TilePlace[]): void {
    if (laid.length <= this.best.length || this.left <= 0) return;
    this.best = this.addTo([], laid, this.best.length) ?? this.best;
  }

  private bestRows(): TilePlace[] {
    const [one, other] = this.pair(0).map((space) => packRows(space)) as [TilePlace[], TilePlace[]];
    return (other.length > one.length ? other : one).slice(0, this.task.most);
  }

  /** Rows along a turn or across it, from either side: four spaces for each turn. */
  private space(index: number): PackingSpace {
    const { turns, floor, tile } = this.task;
    const known = this.spaces[index];
    if (known) return known;
    const quarter = 90 * Math.floor(index / turns.length);
    const made = new PackingSpace(floor, tile, (turns[index % turns.length] ?? 0) + quarter);
    this.spaces[index] = made;
    return made;
  }

  /** Two spaces whose rows run across each other. */
  private pair(guess: number): [PackingSpace, PackingSpace] {
    const { length } = this.task.turns;
    return [this.space((guess % 4) * length), this.space(((guess + 1) % 4) * length)];
  }

  private layBeside(lanes: readonly Polygon[], guess: number): TilePlace[] {
    const laid: TilePlace[] = [];
    for (const space of this.pair(guess)) {
      const part = space.copy();
      for (const ring of lanes) part.block(ring);
      for (const place of laid) part.blockTile(place);
      laid.push(...packRows(part));
    }
    return laid.slice(0, this.task.most);
  }

  improve(): void {
    const { outline } = this.task.floor;
    const box = boundingBox(outline);
    const pitch = Math.max(...this.space(0).pitch);
    for (let round = this.task.rounds; round > 0 && this.left > 0 && !this.isDone(); round--) {
      const middle = {
        x: box.minX + this.random() * (box.maxX - box.minX),
        y: box.minY + this.random() * (box.maxY - box.minY),
      };
      const reach = pitch * (LEAST_REACH + this.random() * (MOST_REACH - LEAST_REACH));
      const stay = this.best.filter((place) => Math.max(Math.abs(place.x - middle.x), Math.abs(place.y - middle.y)) > reach);
      const taken = this.best.length - stay.length;
      const fresh = this.layAround(middle, reach, stay);
      if (fresh.length === 0 || fresh.length < taken) continue;
      const better = this.addTo(stay, fresh, this.best.length);
      if (better) this.best = better;
    }
  }

  private isDone(): boolean {
    return this.best.length >= this.task.most || this.task.isOver?.() === true;
  }

  /** Rows of one turn, then what another adds beside them. */
  private layAround(middle: { x: number; y: number }, reach: number, stay: readonly TilePlace[]): TilePlace[] {
    const fresh: TilePlace[] = [];
    const count = 4 * this.task.turns.length;
    const first = Math.floor(this.random() * count);
    const second = Math.floor(this.random() * count);
    for (const index of [first, second]) {
      const space = this.space(index).around(middle, reach);
      for (const place of stay) space.blockTile(place);
      for (const place of fresh) space.blockTile(place);
      fresh.push(...packRows(space));
    }
    return fresh;
  }

  /**
   * All of the fresh ones, or, where that is not allowed, those that are left when what is in the way is taken out one by
   * one; null: that leaves no more than `beat`.
   */
  private addTo(stay: readonly TilePlace[], fresh: readonly TilePlace[], beat: number): TilePlace[] | null {
    let kept = fresh;
    const out: TilePlace[] = [];
    let found = this.ask([...stay, ...kept]);
    while (found !== null) {
      if (stay.length + kept.length - 1 <= beat || this.left <= 0) return null;
      const worst = found.filter((k) => k >= stay.length).slice(0, ALTERNATIVES);
      if (worst.length === 0) return this.addByHalves(stay, this.shuffled(kept), beat);
      let next: { readonly found: readonly number[]; readonly kept: readonly TilePlace[]; readonly out: TilePlace } | null = null;
      for (const k of worst) {
        if (this.left <= 0) break;
        const without = kept.filter((_, i) => i !== k - stay.length);
        const still = this.ask([...stay, ...without]);
        if (still === null) return this.addAgain([...stay, ...without], out);
        next ??= { found: still, kept: without, out: kept[k - stay.length] as TilePlace };
      }
      if (!next) return null;
      out.push(next.out);
      ({ found, kept } = next);
    }
    return [...stay, ...kept];
  }

  /** What was taken out earlier may not have had to be. */
  private addAgain(laid: TilePlace[], out: readonly TilePlace[]): TilePlace[] {
    for (const place of out) if (this.left > 0 && this.ask([...laid, place]) === null) laid.push(place);
    return laid;
  }

  /** Those of the fresh ones that can be added half by half, where together they are not allowed. */
  private addByHalves(stay: readonly TilePlace[], fresh: readonly TilePlace[], beat: number): TilePlace[] | null {
    const kept = [...stay];
    let open = fresh.length;
    const add = (part: readonly TilePlace[]): void => {
      if (part.length === 0 || this.left <= 0 || kept.length + open <= beat) return;
      if (this.ask([...kept, ...part]) === null) {
        kept.push(...part);
        open -= part.length;
      } else if (part.length === 1) {
        open--;
      } else {
        add(part.slice(0, part.length >> 1));
        add(part.slice(part.length >> 1));
      }
    };
    add(fresh.slice(0, fresh.length >> 1));
    add(fresh.slice(fresh.length >> 1));
    return kept.length > beat ? kept : null;
  }

  private ask(places: readonly TilePlace[]): readonly number[] | null {
    this.left--;
    return this.task.inTheWay(places);
  }

  private shuffled(places: readonly TilePlace[]): TilePlace[] {
    const mixed = [...places];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = Math.floor(this.random() * (i + 1));
      const kept = mixed[i] as TilePlace;
      mixed[i] = mixed[j] as TilePlace;
      mixed[j] = kept;
    }
    return mixed;
  }
}
