import { coreOf, type PackingCell } from '../geometry/packingCells.ts';
import { cliquesOf } from '../geometry/packingCliques.ts';
import type { PickLimit } from '../geometry/pickMost.ts';
import type { Tile } from '../geometry/tile.ts';
import type { MatCells, MatWindow } from './matCells.ts';
import { type Alike, covers } from './matWays.ts';

/** Parts of which mats may not cover one of each. */
interface Forbidden {
  readonly parts: readonly Alike[];
  /** Whether a cell covers any of them; asked once of each cell. */
  readonly covers: WeakMap<PackingCell, boolean>;
}

/** What is known of which cells go together: it holds of every laying with every way kept. */
export class MatLimits {
  private readonly forbidden: Forbidden[] = [];
  private readonly windows: { readonly window: MatWindow; readonly most: number }[] = [];

  constructor(
    private readonly tile: Tile,
    private readonly cells: MatCells,
  ) {}

  /** No laying covers one of each. No two mats cover some of the same, so what covers any of them is fewer than they are: that limit, of some cells. */
  forbid(parts: readonly Alike[], cells: readonly PackingCell[]): PickLimit {
    const one = { parts, covers: new WeakMap<PackingCell, boolean>() };
    this.forbidden.push(one);
    return this.limitOf(one, cells);
  }

  /** No laying has more than so many mats in the cells of a window. */
  atMost(window: MatWindow, most: number): void {
    this.windows.push({ window, most });
  }

  /** All that limits a choice of these cells, by their indices. */
  of(cells: readonly PackingCell[]): PickLimit[] {
    const { tile } = this;
    const cores = cells.map((cell) => {
      const box = coreOf(cell, tile, tile.gap / 2);
      return box && { ...box, frame: cell.frame };
    });
    const limits: PickLimit[] = cliquesOf(cores).map((members) => ({ members, most: 1 }));
    for (const one of this.forbidden) {
      const limit = this.limitOf(one, cells);
      if (limit.members.length > limit.most) limits.push(limit);
    }
    for (const { window, most } of this.windows) {
      const members = cells.flatMap((cell, k) => (this.cells.isIn(window, cell) ? [k] : []));
      if (members.length > most) limits.push({ members, most });
    }
    return limits;
  }

  private limitOf({ parts, covers: known }: Forbidden, cells: readonly PackingCell[]): PickLimit {
    const isMember = (cell: PackingCell): boolean => {
      let is = known.get(cell);
      if (is === undefined) {
        is = parts.some((alike) => alike.some((part) => covers(cell, this.tile, part)));
        known.set(cell, is);
      }
      return is;
    };
    return { members: cells.flatMap((cell, k) => (isMember(cell) ? [k] : [])), most: parts.length - 1 };
  }
}
