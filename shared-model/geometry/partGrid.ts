import type { Part } from './parts.ts';
import type { Box } from './polygon.ts';
import { sortFew } from './sortFew.ts';

/** mm: about one piece and the way beside it. */
const CELL = 1500;
/** A part over more cells than this is looked at wherever one asks. */
const MOST_CELLS = 400;
/** Cells grow until there are no more of them than this: a room drawn a kilometre wide takes no more space than any other. */
const MOST_OF_ALL = 40_000;

const nobody: readonly number[] = [];

/** Finds parts by place. Answers hold each part once, in ascending order of index. */
export class PartGrid {
  private cells: (readonly number[])[] = [];
  /** Parts so large that their cells would be more than all parts. */
  private everywhere: readonly number[] = nobody;
  /** mm */
  private cell = CELL;
  /** The first cell, and how many there are either way. */
  private firstX = 0;
  private firstY = 0;
  private countX = 0;
  private countY = 0;
  private readonly seen: Uint32Array;
  private stamp = 0;

  private readonly first: number;

  /** @param base a grid of the first of these parts, used as it is */
  constructor(
    private readonly parts: readonly Part[],
    private readonly base: PartGrid | null = null,
    like: PartGrid | null = null,
  ) {
    this.seen = new Uint32Array(parts.length);
    this.first = base ? base.parts.length : 0;
    if (like) {
      this.cells = [...like.cells];
      ({
        everywhere: this.everywhere,
        cell: this.cell,
        firstX: this.firstX,
        firstY: this.firstY,
        countX: this.countX,
        countY: this.countY,
      } = like);
    } else this.fill();
  }

  private fill(): void {
    const { parts } = this;
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    for (let index = this.first; index < parts.length; index++) {
      const part = parts[index] as Part;
      if (part.minX < minX) minX = part.minX;
      if (part.minY < minY) minY = part.minY;
      if (part.maxX > maxX) maxX = part.maxX;
      if (part.maxY > maxY) maxY = part.maxY;
    }
    if (!(minX <= maxX && minY <= maxY)) return;
    while (((maxX - minX) / this.cell + 2) * ((maxY - minY) / this.cell + 2) > MOST_OF_ALL) this.cell *= 2;
    this.firstX = Math.floor(minX / this.cell);
    this.firstY = Math.floor(minY / this.cell);
    this.countX = Math.floor(maxX / this.cell) - this.firstX + 1;
    this.countY = Math.floor(maxY / this.cell) - this.firstY + 1;
    this.cells = new Array<readonly number[]>(this.countX * this.countY).fill(nobody);
    for (let index = this.first; index < parts.length; index++)
      this.change(parts[index] as Part, (cell) => {
        if (cell === nobody) return [index];
        (cell as number[]).push(index);
        return cell;
      });
  }

  /** The grid of other parts, of which only those at the `fresh` indices are not the same at the same place of the list. */
  after(parts: readonly Part[], fresh: readonly number[]): PartGrid {
    if (!fresh.every((index) => this.holds(parts[index] as Part))) return new PartGrid(parts, this.base);
    const next = new PartGrid(parts, this.base, this);
    for (let index = 0; index < this.parts.length; index++)
      if (this.parts[index] !== parts[index]) next.change(this.parts[index] as Part, (cell) => cell.filter((other) => other !== index));
    for (const index of fresh) next.change(parts[index] as Part, (cell) => [...cell, index]);
    return next;
  }

  /** Indices of the parts whose box comes within `reach` mm of the given box. */
  near(box: Box, reach: number): number[] {
    const found: number[] = [];
    const before = this.collect(box, reach, found);
    // The base's come first and in order.
    sortFrom(found, before);
    return found;
  }

  /** Adds the same to a list, in no order. @returns how many of the list were there before, or come from the base */
  collect(box: Box, reach: number, found: number[]): number {
    if (this.base) for (const index of this.base.near(box, reach)) found.push(index);
    const before = found.length;
    const minX = box.minX - reach;
    const minY = box.minY - reach;
    const maxX = box.maxX + reach;
    const maxY = box.maxY + reach;
    const fromX = Math.max(0, Math.floor(minX / this.cell) - this.firstX);
    const fromY = Math.max(0, Math.floor(minY / this.cell) - this.firstY);
    const toX = Math.min(this.countX - 1, Math.floor(maxX / this.cell) - this.firstX);
    const toY = Math.min(this.countY - 1, Math.floor(maxY / this.cell) - this.firstY);
    this.stamp++;
    // Not by a function within: it would be made at each call, and with it a list of all it knows.
    for (let y = fromY; y <= toY; y++)
      for (let x = fromX; x <= toX; x++) this.take(this.cells[y * this.countX + x] as readonly number[], minX, minY, maxX, maxY, found);
    this.take(this.everywhere, minX, minY, maxX, maxY, found);
    return before;
  }

  private take(cell: readonly number[], minX: number, minY: number, maxX: number, maxY: number, found: number[]): void {
    const { parts, seen, stamp } = this;
    for (let k = 0; k < cell.length; k++) {
      const index = cell[k] as number;
      if (seen[index] === stamp) continue;
      seen[index] = stamp;
      const part = parts[index] as Part;
      if (part.minX <= maxX && minX <= part.maxX && part.minY <= maxY && minY <= part.maxY) found.push(index);
    }
  }

  private change(part: Part, edit: (cell: readonly number[]) => readonly number[]): void {
    const fromX = Math.floor(part.minX / this.cell) - this.firstX;
    const fromY = Math.floor(part.minY / this.cell) - this.firstY;
    const toX = Math.floor(part.maxX / this.cell) - this.firstX;
    const toY = Math.floor(part.maxY / this.cell) - this.firstY;
    if ((toX - fromX + 1) * (toY - fromY + 1) > MOST_CELLS) {
      this.everywhere = edit(this.everywhere);
      return;
    }
    for (let y = fromY; y <= toY; y++)
      for (let x = fromX; x <= toX; x++) this.cells[y * this.countX + x] = edit(this.cells[y * this.countX + x] as readonly number[]);
  }

  /** True where the part lies within the grid's cells. */
  private holds({ minX, minY, maxX, maxY }: Part): boolean {
    const { cell, firstX, firstY, countX, countY } = this;
    return minX >= firstX * cell && minY >= firstY * cell && maxX < (firstX + countX) * cell && maxY < (firstY + countY) * cell;
  }
}

/** Short lists are nearly in order. */
const SHORT = 48;

function sortFrom(list: number[], first: number): void {
  if (list.length - first > SHORT) {
    const rest = list.splice(first).sort((i, j) => i - j);
    for (const index of rest) list.push(index);
    return;
  }
  sortFew(list, first, list.length);
}
