import type { Part } from './parts.ts';
import type { Box } from './polygon.ts';

/** mm: about one piece and the way beside it. */
const CELL = 1500;

/** Finds parts by place. Answers hold each part once, in ascending order of index. */
export class PartGrid {
  private readonly cells = new Map<number, number[]>();
  private readonly seen: Uint32Array;
  private stamp = 0;

  constructor(private readonly parts: readonly Part[]) {
    this.seen = new Uint32Array(parts.length);
    parts.forEach((part, index) => {
      this.eachCell(part, (key) => {
        const cell = this.cells.get(key);
        if (cell) cell.push(index);
        else this.cells.set(key, [index]);
      });
    });
  }

  /** Indices of the parts whose box comes within `reach` mm of the given box. */
  near(box: Box, reach: number): number[] {
    const grown = { minX: box.minX - reach, minY: box.minY - reach, maxX: box.maxX + reach, maxY: box.maxY + reach };
    const found: number[] = [];
    if ((grown.maxX - grown.minX) * (grown.maxY - grown.minY) > 400 * CELL * CELL) {
      this.parts.forEach((part, index) => {
        if (boxesMeet(part, grown)) found.push(index);
      });
      return found;
    }
    this.stamp++;
    this.eachCell(grown, (key) => {
      for (const index of this.cells.get(key) ?? []) {
        if (this.seen[index] === this.stamp) continue;
        this.seen[index] = this.stamp;
        if (boxesMeet(this.parts[index] as Part, grown)) found.push(index);
      }
    });
    return found.sort((i, j) => i - j);
  }

  private eachCell(box: Box, visit: (key: number) => void): void {
    const lastX = Math.floor(box.maxX / CELL);
    const lastY = Math.floor(box.maxY / CELL);
    for (let x = Math.floor(box.minX / CELL); x <= lastX; x++)
      for (let y = Math.floor(box.minY / CELL); y <= lastY; y++) visit(x * 65_536 + y);
  }
}

const boxesMeet = (p: Box, q: Box): boolean => p.minX <= q.maxX && q.minX <= p.maxX && p.minY <= q.maxY && q.minY <= p.maxY;
