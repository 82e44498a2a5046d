import type { Polygon } from './polygon.ts';

/** mm: sides shorter than this are what rounding leaves. */
const SHORT = 0.05;
/** mm: how far rounding moves a side off its line. */
const OFF = 0.02;
/** Numbers kept of each side: a corner of it and its unit normal. */
const SIDE = 4;

/** The lines that the sides of some rings lie on. */
export class SideLines {
  private readonly lines: Float64Array;

  constructor(rings: readonly Polygon[]) {
    this.lines = new Float64Array(SIDE * rings.reduce((sum, ring) => sum + ring.length, 0));
    let at = 0;
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i++) {
        const a = ring[i] as Polygon[number];
        const b = ring[i + 1 === ring.length ? 0 : i + 1] as Polygon[number];
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
    }
  }

  /** True when every side of these rings runs along one of the lines. */
  hold(rings: readonly Polygon[]): boolean {
    return rings.every((ring) => ring.every((p, i) => this.holdsSide(p, ring[i + 1 === ring.length ? 0 : i + 1] as Polygon[number])));
  }

  private holdsSide(p: Polygon[number], q: Polygon[number]): boolean {
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    if (dx * dx + dy * dy < SHORT * SHORT) return true;
    const { lines } = this;
    for (let k = 0; k < lines.length; k += SIDE) {
      const ax = lines[k] as number;
      const ay = lines[k + 1] as number;
      const nx = lines[k + 2] as number;
      const ny = lines[k + 3] as number;
      if (Math.abs((p.x - ax) * nx + (p.y - ay) * ny) > OFF) continue;
      if (Math.abs((q.x - ax) * nx + (q.y - ay) * ny) <= OFF && (nx !== 0 || ny !== 0)) return true;
    }
    return false;
  }
}
