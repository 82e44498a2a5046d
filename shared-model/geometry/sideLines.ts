import type { Polygon } from './polygon.ts';

/** mm: sides shorter than this are what rounding leaves. */
const SHORT = 0.05;
/** mm: how far rounding moves a side off its line. */
const OFF = 0.02;
/** Numbers kept of each side: a corner of it and its unit normal. */
const SIDE = 4;
/** And of each ring: its box, grown by OFF. */
const BOX = 4;

/** The lines that the sides of some rings lie on. */
export class SideLines {
  private readonly lines: Float64Array;
  private readonly boxes: Float64Array;
  /** Where in `lines` the sides of each ring end. */
  private readonly ends: Int32Array;

  constructor(rings: readonly Polygon[]) {
    this.lines = new Float64Array(SIDE * rings.reduce((sum, ring) => sum + ring.length, 0));
    this.boxes = new Float64Array(BOX * rings.length);
    this.ends = new Int32Array(rings.length);
    let at = 0;
    rings.forEach((ring, r) => {
      let minX = Infinity;
      let minY = Infinity;
      let maxX = -Infinity;
      let maxY = -Infinity;
      for (let i = 0; i < ring.length; i++) {
        const a = ring[i] as Polygon[number];
        const b = ring[i + 1 === ring.length ? 0 : i + 1] as Polygon[number];
        minX = Math.min(minX, a.x);
        minY = Math.min(minY, a.y);
        maxX = Math.max(maxX, a.x);
        maxY = Math.max(maxY, a.y);
        const dx = b.x - a.x;
        const dy = b.y - a.y;
        const size = Math.sqrt(dx * dx + dy * dy);
        if (size === 0) continue;
        this.lines[at] = a.x;
        this.lines[at + 1] = a.y;
        this.lines[at + 2] = -dy / size;
        this.lines[at + 3] = dx / size;
        at += SIDE;
      }
      this.ends[r] = at;
      this.boxes.set([minX - OFF, minY - OFF, maxX + OFF, maxY + OFF], BOX * r);
    });
  }

  /** True when every side of these rings runs along one of the lines, from a corner that lies where the line's own ring does. */
  hold(rings: readonly Polygon[]): boolean {
    return rings.every((ring) => ring.every((p, i) => this.holdsSide(p, ring[i + 1 === ring.length ? 0 : i + 1] as Polygon[number])));
  }

  private holdsSide(p: Polygon[number], q: Polygon[number]): boolean {
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    if (dx * dx + dy * dy < SHORT * SHORT) return true;
    const { lines, boxes, ends } = this;
    for (let r = 0, k = 0; r < ends.length; r++) {
      const end = ends[r] as number;
      const b = BOX * r;
      if (
        p.x < (boxes[b] as number) ||
        p.y < (boxes[b + 1] as number) ||
        p.x > (boxes[b + 2] as number) ||
        p.y > (boxes[b + 3] as number)
      ) {
        k = end;
        continue;
      }
      for (; k < end; k += SIDE) {
        const ax = lines[k] as number;
        const ay = lines[k + 1] as number;
        const nx = lines[k + 2] as number;
        const ny = lines[k + 3] as number;
        if (Math.abs((p.x - ax) * nx + (p.y - ay) * ny) > OFF) continue;
        if (Math.abs((q.x - ax) * nx + (q.y - ay) * ny) <= OFF) return true;
      }
    }
    return false;
  }
}
