import { boxHolds, cut, type PackingCell, packingCells } from '../geometry/packingCells.ts';
import type { PackingFloor } from '../geometry/packingSpace.ts';
import type { Tile, TilePlace } from '../geometry/tile.ts';
import { type Point, turn } from '../geometry/vec.ts';
import { coveredBy, covers, type MatWays, type Taken } from './matWays.ts';

/** mm: the first cells; floors so large that they would be more than MOST_CELLS begin with larger ones. */
const FIRST_SIZE = 300;
const MOST_CELLS = 1200;
/** Single questions between two words of how far it is. */
const TELL_EVERY = 50;
/** Degrees: turns this near are the same. */
const NEAR = 1e-6;

/** First cells by number: whatever they are cut into stays theirs. */
export type MatWindow = ReadonlySet<number>;

/** The cells of a floor in which mats may lie: those that shut no way by themselves. */
export class MatCells {
  private cells: readonly PackingCell[] = [];
  private firsts: readonly PackingCell[] = [];
  private readonly firstOf = new Map<PackingCell, number>();
  /** What shuts a way by itself, drawn in. */
  private readonly alone: Taken[] = [];

  constructor(
    private readonly tile: Tile,
    private readonly ways: MatWays,
  ) {}

  /** Looks at the whole floor; yields now and then. */
  *lookAt(floor: PackingFloor, turns: readonly number[]): Generator<void> {
    let size = FIRST_SIZE;
    let found = packingCells(floor, this.tile, turns, size);
    while (found.length > MOST_CELLS) {
      size *= 1.5;
      found = packingCells(floor, this.tile, turns, size);
    }
    this.firsts = yield* this.passing(found);
    this.cells = this.firsts;
    this.firsts.forEach((cell, k) => {
      this.firstOf.set(cell, k);
    });
  }

  /** Middles of the first cells on the plan, by number. */
  middles(): Point[] {
    return this.firsts.map(({ minU, maxU, minV, maxV, frame }) => turn({ x: (minU + maxU) / 2, y: (minV + maxV) / 2 }, frame));
  }

  /** True when all mats lie at one turn and a quarter turn to it. */
  isOneFrame(): boolean {
    return this.firsts.every(({ frame }) => frame === this.firsts[0]?.frame);
  }

  isIn(window: MatWindow, cell: PackingCell): boolean {
    return window.has(this.firstOf.get(cell) as number);
  }

  of(window: MatWindow): PackingCell[] {
    return this.cells.filter((cell) => this.isIn(window, cell));
  }

  /** Those of the places whose middle lies in a cell of the window. */
  placesIn(window: MatWindow, places: readonly TilePlace[]): TilePlace[] {
    const cells = [...window].map((k) => this.firsts[k] as PackingCell);
    return places.filter((place) => cells.some((cell) => isOf(cell, place)));
  }

  /** Cuts some of the cells to no more than `size` (mm); yields now and then. */
  *cut(some: readonly PackingCell[], size: number): Generator<void> {
    const isMeant = new Set(some);
    const next: PackingCell[] = [];
    for (const cell of this.cells) {
      if (!isMeant.has(cell)) {
        next.push(cell);
        continue;
      }
      const first = this.firstOf.get(cell) as number;
      const parts = yield* this.passing(cut(cell, size));
      for (const part of parts) this.firstOf.set(part, first);
      next.push(...parts);
    }
    this.cells = next;
  }

  private *passing(cells: readonly PackingCell[]): Generator<void, PackingCell[]> {
    const kept: PackingCell[] = [];
    let told = this.ways.asked;
    for (const cell of cells) {
      if (this.passes(cell)) kept.push(cell);
      if (this.ways.asked < told + TELL_EVERY) continue;
      told = this.ways.asked;
      yield;
    }
    return kept;
  }

  private passes(cell: PackingCell): boolean {
    if (this.alone.some((part) => covers(cell, this.tile, part))) return false;
    const core = coveredBy(cell, this.tile);
    if (!core || !this.ways.shuts([core])) return true;
    this.alone.push(...this.ways.drawnIn(this.ways.least([core])));
    return false;
  }
}

function isOf(cell: PackingCell, place: TilePlace): boolean {
  const apart = Math.abs((((place.turn - cell.frame - 90 * cell.way) % 180) + 180) % 180);
  if (Math.min(apart, 180 - apart) > NEAR) return false;
  return boxHolds(cell, turn(place, -cell.frame));
}
