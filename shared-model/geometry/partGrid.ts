import type { Part } from './parts.ts';
import { type Box, boxesMeet } from './polygon.ts';

/** mm: about one piece and the way beside it. */
const CELL = 1500;
/** A part over more cells than this is looked at wherever one asks: its cells would be more than all parts. */
const MOST_CELLS = 400;
/** Where those are kept; the keys of cells are whole. */
const EVERYWHERE = 0.5;

/** Finds parts by place. Answers hold each part once, in ascending order of index. */
export class PartGrid {
  private cells = new Map<number, readonly number[]>();
  private readonly seen: Uint32Array;
  private stamp = 0;

  private readonly first: number;

  /** @param base a grid of the first of these parts, used as it is */
  constructor(
    private readonly parts: readonly Part[],
    private readonly base: PartGrid | null = null,
    fill = true,
  ) {
    this.seen = new Uint32Array(parts.length);
    this.first = base ? base.parts.length : 0;
    if (!fill) return;
    for (let index = this.first; index < parts.length; index++) {
      for (const key of homesOf(parts[index] as Part)) {
        const cell = this.cells.get(key) as number[] | undefined;
        if (cell) cell.push(index);
        else this.cells.set(key, [index]);
      }
    }
  }

  /** The grid of other parts, of which only those at the `fresh` indices are not the same at the same place of the list. */
  after(parts: readonly Part[], fresh: readonly number[]): PartGrid {
    const next = new PartGrid(parts, this.base, false);
    next.cells = new Map(this.cells);
    const change = (part: Part, edit: (cell: readonly number[]) => readonly number[]): void => {
      for (const key of homesOf(part)) next.cells.set(key, edit(next.cells.get(key) ?? []));
    };
    for (let index = 0; index < this.parts.length; index++)
      if (this.parts[index] !== parts[index]) change(this.parts[index] as Part, (cell) => cell.filter((other) => other !== index));
    for (const index of fresh) change(parts[index] as Part, (cell) => [...cell, index]);
    return next;
  }

  /** Indices of the parts whose box comes within `reach` mm of the given box. */
  near(box: Box, reach: number): number[] {
    const grown = { minX: box.minX - reach, minY: box.minY - reach, maxX: box.maxX + reach, maxY: box.maxY + reach };
    const found = this.base ? this.base.near(box, reach) : [];
    const before = found.length;
    if ((grown.maxX - grown.minX) * (grown.maxY - grown.minY) > MOST_CELLS * CELL * CELL) {
      for (let index = this.first; index < this.parts.length; index++) if (boxesMeet(this.parts[index] as Part, grown)) found.push(index);
      return found;
    }
    this.stamp++;
    const lastX = Math.floor(grown.maxX / CELL);
    const lastY = Math.floor(grown.maxY / CELL);
    for (let x = Math.floor(grown.minX / CELL); x <= lastX; x++)
      for (let y = Math.floor(grown.minY / CELL); y <= lastY; y++) this.take(x * 65_536 + y, grown, found);
    this.take(EVERYWHERE, grown, found);
    // The base's come first and in order.
    sortFrom(found, before);
    return found;
  }

  private take(key: number, grown: Box, found: number[]): void {
    const cell = this.cells.get(key);
    if (!cell) return;
    for (let k = 0; k < cell.length; k++) {
      const index = cell[k] as number;
      if (this.seen[index] === this.stamp) continue;
      this.seen[index] = this.stamp;
      if (boxesMeet(this.parts[index] as Part, grown)) found.push(index);
    }
  }
}

/** Short lists, which are nearly in order, are sorted in place: the engine's own sort makes two more of each. */
const SHORT = 48;

function sortFrom(list: number[], first: number): void {
  if (list.length - first > SHORT) {
    const rest = list.splice(first).sort((i, j) => i - j);
    for (const index of rest) list.push(index);
    return;
  }
  for (let k = first + 1; k < list.length; k++) {
    const index = list[k] as number;
    let at = k;
    for (; at > first && (list[at - 1] as number) > index; at--) list[at] = list[at - 1] as number;
    list[at] = index;
  }
}

function homesOf(part: Part): number[] {
  const cells = ((part.maxX - part.minX) / CELL + 1) * ((part.maxY - part.minY) / CELL + 1);
  return cells > MOST_CELLS ? [EVERYWHERE] : cellsOf(part);
}

function cellsOf(box: Box): number[] {
  const keys: number[] = [];
  const lastX = Math.floor(box.maxX / CELL);
  const lastY = Math.floor(box.maxY / CELL);
  for (let x = Math.floor(box.minX / CELL); x <= lastX; x++)
    for (let y = Math.floor(box.minY / CELL); y <= lastY; y++) keys.push(x * 65_536 + y);
  return keys;
}
