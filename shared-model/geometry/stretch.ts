import type { Gap } from './gaps.ts';
import type { Part } from './parts.ts';
import { type Box, boundingBox, grownBox } from './polygon.ts';
import type { Point } from './vec.ts';
import { workDone } from './workDone.ts';

/** mm: two stretches whose ends come this near share a corner. */
export const SAME_CORNER = 1;

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
  /** The line's box, grown by SAME_CORNER. */
  readonly cornerBox: Box;
}

/**
 * Edges in the gap's axes, four numbers each: s1, h1, s2, h2 (s along the travel, h across), from lesser to greater s.
 * These lists are used again by every stretch: a drag asks for hundreds a frame, and to make them anew took most of it.
 */
const EDGE = 4;
let edges = new Float64Array(1024);
/** The same seen by one who walks the other way. */
let turned = new Float64Array(1024);
/** Where along the walk an edge ends or runs through the middle line. */
let events = new Float64Array(1024);
/** Edges on either side of the middle line, by where they begin in the list. */
let above = new Int32Array(256);
let below = new Int32Array(256);

function makeRoom(count: number): void {
  if (edges.length >= EDGE * count) return;
  edges = new Float64Array(2 * EDGE * count);
  turned = new Float64Array(2 * EDGE * count);
  events = new Float64Array(2 * EDGE * count);
  above = new Int32Array(2 * count);
  below = new Int32Array(2 * count);
}

/** @param nearby parts that may lie within `reach` mm of the gap's middle; the walk stops there. */
export function stretchAt(gap: Gap, nearby: readonly Part[], threshold: number, reach: number): Stretch {
  workDone.stretches++;
  const across = { x: (gap.bx - gap.ax) / gap.width, y: (gap.by - gap.ay) / gap.width };
  const along = { x: -across.y, y: across.x };
  const middle = { x: (gap.ax + gap.bx) / 2, y: (gap.ay + gap.by) / 2 };
  const size = edgesAround(middle, along, across, nearby, threshold, reach);
  for (let e = 0; e < size; e += EDGE) {
    turned[e] = -(edges[e + 2] as number);
    turned[e + 1] = edges[e + 3] as number;
    turned[e + 2] = -(edges[e] as number);
    turned[e + 3] = edges[e + 1] as number;
  }
  const ahead = endAt(walkAhead(edges, size, threshold, reach, gap.width / 2), 1, middle, along, across);
  const back = endAt(walkAhead(turned, size, threshold, reach, gap.width / 2), -1, middle, along, across);
  return { middle, along, across, back, ahead, length: ahead.offset - back.offset };
}

function endAt(end: WalkEnd, sign: 1 | -1, middle: Point, along: Point, across: Point): StretchEnd {
  const offset = sign * end.s;
  const x = middle.x + along.x * offset;
  const y = middle.y + along.y * offset;
  const a = { x: x + across.x * end.low, y: y + across.y * end.low };
  const b = { x: x + across.x * end.high, y: y + across.y * end.high };
  return { offset, isOpen: end.isOpen, a, b, cornerBox: grownBox(boundingBox([a, b]), SAME_CORNER) };
}

/** Lists the edges near the middle line; one that lies a threshold away on one side narrows nothing. @returns numbers in the list */
function edgesAround(middle: Point, along: Point, across: Point, nearby: readonly Part[], threshold: number, reach: number): number {
  let most = 0;
  for (const { xy } of nearby) most += xy.length / 2;
  makeRoom(most);
  let size = 0;
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
      const isOnward = s1 <= s2;
      edges[size] = isOnward ? s1 : s2;
      edges[size + 1] = isOnward ? h1 : h2;
      edges[size + 2] = isOnward ? s2 : s1;
      edges[size + 3] = isOnward ? h2 : h1;
      size += EDGE;
    }
  }
  return size;
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
function walkAhead(list: Float64Array, size: number, threshold: number, reach: number, half: number): WalkEnd {
  const count = eventsOf(list, size, reach);
  let low = -half;
  let high = half;
  for (let from = 0; from < reach; ) {
    let to = reach;
    for (let k = 0; k < count; k++) {
      const at = events[k] as number;
      if (at > from && at < to) to = at;
    }
    if (to - from < SAME) {
      from = to;
      continue;
    }
    let up = 0;
    let down = 0;
    const middle = (from + to) / 2;
    for (let e = 0; e < size; e += EDGE) {
      const s1 = list[e] as number;
      const s2 = list[e + 2] as number;
      if (isAcrossAt(list, e, from)) return { s: from, isOpen: false, low, high };
      if (s1 > from + SAME || s2 < to - SAME || s2 - s1 <= SAME) continue;
      if (heightAt(list, e, middle) > 0) above[up++] = e;
      else below[down++] = e;
    }
    const wide = wideFrom(list, up, down, from, to, threshold);
    if (wide === null || wide > from) {
      const at = wide ?? to;
      high = threshold;
      for (let k = 0; k < up; k++) high = Math.min(high, heightAt(list, above[k] as number, at));
      low = -threshold;
      for (let k = 0; k < down; k++) low = Math.max(low, heightAt(list, below[k] as number, at));
    }
    if (wide !== null) return { s: wide, isOpen: true, low, high };
    from = to;
  }
  return { s: reach, isOpen: true, low, high };
}

/** Lists where within `reach` (mm) an edge ends or runs through the middle line, where the way ends. @returns how many */
function eventsOf(list: Float64Array, size: number, reach: number): number {
  let count = 0;
  for (let e = 0; e < size; e += EDGE) {
    const s1 = list[e] as number;
    const h1 = list[e + 1] as number;
    const s2 = list[e + 2] as number;
    const h2 = list[e + 3] as number;
    if (s1 > SAME && s1 < reach) events[count++] = s1;
    if (s2 > SAME && s2 < reach) events[count++] = s2;
    if (h1 > 0 === h2 > 0 || s1 === s2) continue;
    const s = s1 + ((s2 - s1) * h1) / (h1 - h2);
    if (s > SAME && s < reach) events[count++] = s;
  }
  return count;
}

/** An edge that stands across the middle line at s: it ends the walk. */
function isAcrossAt(list: Float64Array, e: number, s: number): boolean {
  const s1 = list[e] as number;
  const s2 = list[e + 2] as number;
  if (s < SAME || s1 > s + SAME || s2 < s - SAME) return false;
  const h1 = list[e + 1] as number;
  const h2 = list[e + 3] as number;
  if (s2 - s1 <= SAME) return Math.min(h1, h2) < -SAME && Math.max(h1, h2) > SAME;
  return h1 > 0 !== h2 > 0 && Math.abs(s1 + ((s2 - s1) * h1) / (h1 - h2) - s) <= SAME;
}

function heightAt(list: Float64Array, e: number, s: number): number {
  const s1 = list[e] as number;
  const h1 = list[e + 1] as number;
  return h1 + (((list[e + 3] as number) - h1) * (s - s1)) / ((list[e + 2] as number) - s1);
}

/** The first s in [from, to] at which every edge above lies a threshold over every edge below; null: none. */
function wideFrom(list: Float64Array, up: number, down: number, from: number, to: number, threshold: number): number | null {
  let first = from;
  let last = to;
  for (let i = 0; i < up; i++) {
    const e = above[i] as number;
    for (let j = 0; j < down; j++) {
      const f = below[j] as number;
      const atFrom = heightAt(list, e, from) - heightAt(list, f, from) - threshold;
      const atTo = heightAt(list, e, to) - heightAt(list, f, to) - threshold;
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
