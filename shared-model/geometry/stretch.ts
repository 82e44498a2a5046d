import type { Gap } from './gaps.ts';
import type { Part } from './parts.ts';
import type { Point } from './vec.ts';
import { workDone } from './workDone.ts';

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
  workDone.stretches++;
  const across = { x: (gap.bx - gap.ax) / gap.width, y: (gap.by - gap.ay) / gap.width };
  const along = { x: -across.y, y: across.x };
  const middle = { x: (gap.ax + gap.bx) / 2, y: (gap.ay + gap.by) / 2 };
  const edges = edgesAround(middle, along, across, nearby, threshold, reach);
  const turned = edges.map(({ s1, h1, s2, h2 }) => ({ s1: -s2, h1: h2, s2: -s1, h2: h1 }));
  const ahead = endAt(walkAhead(edges, threshold, reach, gap.width / 2), 1, middle, along, across);
  const back = endAt(walkAhead(turned, threshold, reach, gap.width / 2), -1, middle, along, across);
  return { middle, along, across, back, ahead, length: ahead.offset - back.offset };
}

function endAt(end: WalkEnd, sign: 1 | -1, middle: Point, along: Point, across: Point): StretchEnd {
  const offset = sign * end.s;
  const x = middle.x + along.x * offset;
  const y = middle.y + along.y * offset;
  return {
    offset,
    isOpen: end.isOpen,
    a: { x: x + across.x * end.low, y: y + across.y * end.low },
    b: { x: x + across.x * end.high, y: y + across.y * end.high },
  };
}

/** Edges near the middle line; one that lies a threshold away on one side narrows nothing. */
function edgesAround(middle: Point, along: Point, across: Point, nearby: readonly Part[], threshold: number, reach: number): Edge[] {
  const edges: Edge[] = [];
  for (const { xy } of nearby) {
    const count = xy.length === 4 ? 1 : xy.length / 2;
    for (let i = 0; i < count; i++) {
      const k = (2 * i + 2) % xy.length;
      const px = (xy[2 * i] as number) - middle.x;
      const py = (xy[2 * i + 1] as number) - middle.y;
      const qx = (xy[k] as number) - middle.x;
      const qy = (xy[k + 1] as number) - middle.y;
      const h1 = px * across.x + py * across.y;
      const h2 = qx * across.x + qy * across.y;
      if ((h1 >= threshold && h2 >= threshold) || (h1 <= -threshold && h2 <= -threshold)) continue;
      const s1 = px * along.x + py * along.y;
      const s2 = qx * along.x + qy * along.y;
      if ((s1 > reach && s2 > reach) || (s1 < -reach && s2 < -reach)) continue;
      edges.push(s1 <= s2 ? { s1, h1, s2, h2 } : { s1: s2, h1: h2, s2: s1, h2: h1 });
    }
  }
  return edges;
}

interface WalkEnd {
  readonly s: number;
  readonly isOpen: boolean;
  readonly low: number;
  readonly high: number;
}

/** Two edges nearer along the travel than this (mm) end together: rounding of turned pieces. */
const SAME = 1e-6;

/** Walks from 0 to where the width across reaches the threshold or something stands in the middle. */
function walkAhead(edges: readonly Edge[], threshold: number, reach: number, half: number): WalkEnd {
  const sorted = [0, reach];
  for (const { s1, h1, s2, h2 } of edges) {
    if (s1 > SAME && s1 < reach) sorted.push(s1);
    if (s2 > SAME && s2 < reach) sorted.push(s2);
    // Where an edge runs through the middle line, the way ends.
    if (h1 > 0 === h2 > 0 || s1 === s2) continue;
    const s = s1 + ((s2 - s1) * h1) / (h1 - h2);
    if (s > SAME && s < reach) sorted.push(s);
  }
  sorted.sort((p, q) => p - q);
  let low = -half;
  let high = half;
  const above: Edge[] = [];
  const below: Edge[] = [];
  for (let k = 0; k + 1 < sorted.length; k++) {
    const from = sorted[k] as number;
    const to = sorted[k + 1] as number;
    if (to - from < SAME) continue;
    above.length = 0;
    below.length = 0;
    for (const e of edges) {
      if (isAcrossAt(e, from)) return { s: from, isOpen: false, low, high };
      if (e.s1 > from + SAME || e.s2 < to - SAME || e.s2 - e.s1 <= SAME) continue;
      if (heightAt(e, (from + to) / 2) > 0) above.push(e);
      else below.push(e);
    }
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
export function isInStretch({ middle, along, across, back, ahead }: Stretch, gap: Gap): boolean {
  const ax = gap.ax - middle.x;
  const ay = gap.ay - middle.y;
  const bx = gap.bx - middle.x;
  const by = gap.by - middle.y;
  if ((ax * across.x + ay * across.y) * (bx * across.x + by * across.y) > 0) return false;
  const offset = ((ax + bx) * along.x + (ay + by) * along.y) / 2;
  const slack = 1;
  return offset >= back.offset - slack && offset <= ahead.offset + slack;
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
  const dx = p.x - a.x - t * ex;
  const dy = p.y - a.y - t * ey;
  return Math.sqrt(dx * dx + dy * dy);
}
