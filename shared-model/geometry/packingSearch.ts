import { packRows } from './packingRows.ts';
import { type PackingFloor, PackingSpace } from './packingSpace.ts';
import { boundingBox } from './polygon.ts';
import { seededRandom } from './seededRandom.ts';
import type { Tile, TilePlace } from './tile.ts';

export interface PackingTask {
  readonly floor: PackingFloor;
  readonly tile: Tile;
  /** Turns of a tile's width from the plan's x axis, degrees; each is tried with a quarter turn more as well. */
  readonly turns: readonly number[];
  /** No more than this many will fit: stop there. */
  readonly most: number;
  /** What else has to hold of tiles together. Fewer tiles never break what more of them kept. */
  readonly isAllowed: (places: readonly TilePlace[]) => boolean;
  /** How often `isAllowed` may be asked: the work that is spent, counted, never timed. */
  readonly questions: number;
  readonly seed: number;
}

/** Rounds of the search for each question that may be asked, for floors where rounds ask little. */
const ROUNDS_PER_QUESTION = 1.5;
/** Of the tiles' greater pitch: how far round its middle a round takes tiles up and lays them anew. */
const LEAST_REACH = 0.45;
const MOST_REACH = 1.5;

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
  private readonly spaces: readonly PackingSpace[];
  private readonly random: () => number;
  private left: number;

  constructor(private readonly task: PackingTask) {
    this.spaces = [0, 90, 180, 270].flatMap((quarter) => task.turns.map((turn) => new PackingSpace(task.floor, task.tile, turn + quarter)));
    this.random = seededRandom(task.seed);
    this.left = task.questions;
  }

  start(): void {
    const laid = this.spaces.map((space) => packRows(space)).sort((p, q) => q.length - p.length);
    for (const places of laid) {
      if (this.left <= 0 || this.isDone() || places.length <= this.best.length) break;
      const kept = this.addTo([], places, this.best.length);
      if (kept && kept.length > this.best.length) this.best = kept;
    }
  }

  improve(): void {
    const { outline } = this.task.floor;
    const box = boundingBox(outline);
    const pitch = Math.max(...(this.spaces[0]?.pitch ?? [0]));
    for (let round = this.task.questions * ROUNDS_PER_QUESTION; round > 0 && this.left > 0 && !this.isDone(); round--) {
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
    return this.best.length >= this.task.most;
  }

  /** Rows of one turn, then what another adds beside them. */
  private layAround(middle: { x: number; y: number }, reach: number, stay: readonly TilePlace[]): TilePlace[] {
    const fresh: TilePlace[] = [];
    const first = Math.floor(this.random() * this.spaces.length);
    const second = Math.floor(this.random() * this.spaces.length);
    for (const index of [first, second]) {
      const space = this.spaces[index]?.around(middle, reach);
      if (!space) continue;
      for (const place of stay) space.blockTile(place);
      for (const place of fresh) space.blockTile(place);
      fresh.push(...packRows(space));
    }
    return fresh;
  }

  /** All of the fresh ones, or, where that is not allowed, those that can be added one by one; null: that leaves no more than `beat`. */
  private addTo(stay: readonly TilePlace[], fresh: readonly TilePlace[], beat: number): TilePlace[] | null {
    const all = [...stay, ...fresh];
    if (this.ask(all)) return all;
    if (all.length - 1 <= beat) return null;
    const kept = [...stay];
    let open = fresh.length;
    for (const place of this.shuffled(fresh)) {
      if (this.left <= 0) break;
      if (kept.length + open <= beat) return null;
      open--;
      if (this.ask([...kept, place])) kept.push(place);
    }
    return kept.length > beat ? kept : null;
  }

  private ask(places: readonly TilePlace[]): boolean {
    this.left--;
    return this.task.isAllowed(places);
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
