import type { Gap } from './gaps.ts';
import type { Part } from './parts.ts';
import { distance, type Point } from './vec.ts';

/**
 * The narrow stretch that a gap belongs to: from the gap both ways along the direction of travel, square to it, as
 * long as the clear width across stays below a threshold. Not the track of a disc's centre.
 */
export interface Stretch {
  /** The middle of the gap. */
  readonly middle: Point;
  /** Unit direction of travel, and across from the gap's first side to its second. */
  readonly along: Point;
  readonly across: Point;
  /** mm along, from the gap's middle: `back` at most 0, `ahead` at least 0 */
  readonly back: StretchEnd;
  readonly ahead: StretchEnd;
  /** mm between back and ahead */
  readonly length: number;
}

export interface StretchEnd {
  readonly offset: number;
  /** False: something stands across the middle there; the stretch ends blind or turns a corner. */
  readonly isOpen: boolean;
  /** The line across at the end, between both sides just inside the stretch. */
  readonly a: Point;
  readonly b: Point;
}

/** An edge in the gap's axes: s along the travel, h across, from lesser to greater s. */
interface Edge {
  readonly s1: number;
  readonly h1: number;
  readonly s2: number;
  readonly h2: number;
}

/** @param nearby parts that may lie within `reach` mm of the gap's middle; the walk stops there. */
export function stretchAt(gap: Gap, nearby: readonly Part[], threshold: number, reach: number): Stretch {
  const across = { x: (gap.bx - gap.ax) / gap.width, y: (gap.by - gap.ay) / gap.width };
  const along = { x: -across.y, y: across.x };
  const middle = { x: (gap.ax + gap.bx) / 2, y: (gap.ay + gap.by) / 2 };
  const edges = edgesAround(middle, along, across, nearby);
  const place = (s: number, h: number): Point => ({
    x: middle.x + along.x * s + across.x * h,
    y: middle.y + along.y * s + across.y * h,
  });
  const walk = (edgesAhead: readonly Edge[], sign: 1 | -1): StretchEnd => {
    const end = walkAhead(edgesAhead, threshold, reach, gap.width / 2);
    return { offset: sign * end.s, isOpen: end.isOpen, a: place(sign * end.s, end.low), b: place(sign * end.s, end.high) };
  };
  const ahead = walk(edges, 1);
  const back = walk(
    edges.map(({ s1, h1, s2, h2 }) => ({ s1: -s2, h1: h2, s2: -s1, h2: h1 })),
    -1,
  );
  return { middle, along, across, back, ahead, length: ahead.offset - back.offset };
}

function edgesAround(middle: Point, along: Point, across: Point, nearby: readonly Part[]): Edge[] {
  const edges: Edge[] = [];
  for (const { xy } of nearby) {
    const count = xy.length === 4 ? 1 : xy.length / 2;
    for (let i = 0; i < count; i++) {
      const k = (2 * i + 2) % xy.length;
      const px = (xy[2 * i] as number) - middle.x;
      const py = (xy[2 * i + 1] as number) - middle.y;
      const qx = (xy[k] as number) - middle.x;
      const qy = (xy[k + 1] as number) - middle.y;
      const s1 = px * along.x + py * along.y;
      const s2 = qx * along.x + qy * along.y;
      const h1 = px * across.x + py * across.y;
      const h2 = qx * across.x + qy * across.y;
      edges.push(s1 <= s2 ? { s1, h1, s2, h2 } : { s1: s2, h1: h2, s2: s1, h2: h1 });
    }
  }
  return edges;
}

/** Two edges nearer along the travel than this (mm) end together: rounding of turned pieces. */
const SAME = 1e-6;

/** Walks from 0 to where the width across reaches the threshold or something stands in the middle. */
function walkAhead(edges: readonly Edge[], threshold: number, reach: number, half: number) {
  const marks = new Set<number>([0, reach]);
  for (const { s1, h1, s2, h2 } of edges) {
    for (const s of [s1, s2]) if (s > SAME && s < reach) marks.add(s);
    // Where an edge runs through the middle line, the way ends.
    if (h1 > 0 === h2 > 0 || s1 === s2) continue;
    const s = s1 + ((s2 - s1) * h1) / (h1 - h2);
    if (s > SAME && s < reach) marks.add(s);
  }
  const sorted = [...marks].sort((p, q) => p - q);
  let low = -half;
  let high = half;
  for (let k = 0; k + 1 < sorted.length; k++) {
    const from = sorted[k] as number;
    const to = sorted[k + 1] as number;
    if (edges.some((e) => isAcrossAt(e, from))) return { s: from, isOpen: false, low, high };
    if (to - from < SAME) continue;
    const over = edges.filter((e) => e.s1 <= from + SAME && e.s2 >= to - SAME && e.s2 - e.s1 > SAME);
    const above = over.filter((e) => heightAt(e, (from + to) / 2) > 0);
    const below = over.filter((e) => heightAt(e, (from + to) / 2) <= 0);
    const wide = wideFrom(above, below, from, to, threshold);
    if (wide !== null) {
      if (wide > from) [low, high] = span(above, below, wide, threshold);
      return { s: wide, isOpen: true, low, high };
    }
    [low, high] = span(above, below, to, threshold);
  }
  return { s: reach, isOpen: true, low, high };
}

/** An edge that stands across the middle line at s: it ends the walk. */
function isAcrossAt({ s1, h1, s2, h2 }: Edge, s: number): boolean {
  if (s < SAME || s1 > s + SAME || s2 < s - SAME) return false;
  if (s2 - s1 <= SAME) return Math.min(h1, h2) < -SAME && Math.max(h1, h2) > SAME;
  return h1 > 0 !== h2 > 0 && Math.abs(s1 + ((s2 - s1) * h1) / (h1 - h2) - s) <= SAME;
}

const heightAt = ({ s1, h1, s2, h2 }: Edge, s: number): number => h1 + ((h2 - h1) * (s - s1)) / (s2 - s1);

function span(above: readonly Edge[], below: readonly Edge[], s: number, threshold: number): [number, number] {
  const high = Math.min(threshold, ...above.map((e) => heightAt(e, s)));
  const low = Math.max(-threshold, ...below.map((e) => heightAt(e, s)));
  return [low, high];
}

/** The first s in [from, to] at which every edge above lies a threshold over every edge below; null: none. */
function wideFrom(above: readonly Edge[], below: readonly Edge[], from: number, to: number, threshold: number): number | null {
  let first = from;
  let last = to;
  for (const e of above) {
    for (const f of below) {
      const atFrom = heightAt(e, from) - heightAt(f, from) - threshold;
      const atTo = heightAt(e, to) - heightAt(f, to) - threshold;
      if (atFrom >= 0 && atTo >= 0) continue;
      if (atFrom < 0 && atTo < 0) return null;
      const zero = from + ((to - from) * atFrom) / (atFrom - atTo);
      if (atFrom < 0) first = Math.max(first, zero);
      else last = Math.min(last, zero);
    }
  }
  return first <= last ? first : null;
}

/** True when a gap's line crosses the stretch: it is narrow for the same reason. */
export function isInStretch(stretch: Stretch, gap: Gap): boolean {
  const local = (x: number, y: number): [number, number] => {
    const px = x - stretch.middle.x;
    const py = y - stretch.middle.y;
    return [px * stretch.along.x + py * stretch.along.y, px * stretch.across.x + py * stretch.across.y];
  };
  const [sa, ha] = local(gap.ax, gap.ay);
  const [sb, hb] = local(gap.bx, gap.by);
  if (ha * hb > 0) return false;
  const slack = 1;
  const middle = (sa + sb) / 2;
  return middle >= stretch.back.offset - slack && middle <= stretch.ahead.offset + slack;
}

/** mm between two segments' nearest points, here the ends of two stretches. */
export function betweenEnds(p: StretchEnd, q: StretchEnd): number {
  return Math.min(toSegment(p.a, q), toSegment(p.b, q), toSegment(q.a, p), toSegment(q.b, p));
}

function toSegment(p: Point, { a, b }: StretchEnd): number {
  const ex = b.x - a.x;
  const ey = b.y - a.y;
  const square = ex * ex + ey * ey;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * ex + (p.y - a.y) * ey) / square));
  return distance(p, { x: a.x + t * ex, y: a.y + t * ey });
}
