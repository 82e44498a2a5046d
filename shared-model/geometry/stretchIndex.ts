import type { Gap } from './gaps.ts';
import type { Stretch } from './stretch.ts';

/** mm: about the length of a piece. */
const CELL = 1500;

/** Finds the stretches that a gap might cross. */
export class StretchIndex {
  private readonly cells = new Map<number, Stretch[]>();

  /** @param widest mm: no gap asked about is wider, so its middle lies within half of that of the line it crosses */
  constructor(private readonly widest: number) {}

  add(stretch: Stretch): void {
    const { x: middleX, y: middleY, acrossX, acrossY, back, ahead } = stretch;
    const reach = this.widest / 2 + 2;
    const x1 = middleX - acrossY * back.offset;
    const x2 = middleX - acrossY * ahead.offset;
    const y1 = middleY + acrossX * back.offset;
    const y2 = middleY + acrossX * ahead.offset;
    const lastX = Math.floor((Math.max(x1, x2) + reach) / CELL);
    const lastY = Math.floor((Math.max(y1, y2) + reach) / CELL);
    for (let x = Math.floor((Math.min(x1, x2) - reach) / CELL); x <= lastX; x++) {
      for (let y = Math.floor((Math.min(y1, y2) - reach) / CELL); y <= lastY; y++) {
        const cell = this.cells.get(x * 65_536 + y);
        if (cell) cell.push(stretch);
        else this.cells.set(x * 65_536 + y, [stretch]);
      }
    }
  }

  near(gap: Gap): readonly Stretch[] {
    const x = Math.floor((gap.ax + gap.bx) / 2 / CELL);
    const y = Math.floor((gap.ay + gap.by) / 2 / CELL);
    return this.cells.get(x * 65_536 + y) ?? [];
  }
}
