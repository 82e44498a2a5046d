import type { Gap } from './gaps.ts';
import type { Part } from './parts.ts';
import type { Box } from './polygon.ts';
import { sortFew } from './sortFew.ts';
import type { Point } from './vec.ts';
import { workDone } from './workDone.ts';

/** mm: two stretches whose ends come this near share a corner. */
export const SAME_CORNER = 1;
/** Two edges nearer along the travel than this (mm) end together: rounding of turned pieces. */
const SAME = 1e-6;

/**
 * The narrow stretch that a gap belongs to: from the gap both ways along the direction of travel, square to it, as
 * long as the clear width across stays below a threshold. Not the track of a disc's centre.
 */
export interface Stretch {
  /** The middle of the gap. Numbers side by side: there are hundreds at each frame, and points would take twice the room. */
  readonly x: number;
  readonly y: number;
  /** Unit vector across, from the gap's first side to its second. */
  readonly acrossX: number;
  readonly acrossY: number;
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
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** Unit direction of travel. */
export const alongOf = ({ acrossX, acrossY }: Stretch): Point => ({ x: -acrossY, y: acrossX });

/** The middle of the line across at an end. */
export const middleOfEnd = ({ ax, ay, bx, by }: StretchEnd): Point => ({ x: (ax + bx) / 2, y: (ay + by) / 2 });

/** The box round the line across at an end in which the end of a stretch lies that shares its corner. */
export const cornerBox = ({ ax, ay, bx, by }: StretchEnd): Box => ({
  minX: Math.min(ax, bx) - SAME_CORNER,
  minY: Math.min(ay, by) - SAME_CORNER,
  maxX: Math.max(ax, bx) + SAME_CORNER,
  maxY: Math.max(ay, by) + SAME_CORNER,
});

/**
 * Edges in the gap's axes, four numbers each: s1, h1, s2, h2 (s along the travel, h across), from lesser to greater s.
 * These lists are used again by every stretch: a drag asks for hundreds a frame, and to make them anew took most of it.
 */
const EDGE = 4;
let edges = new Float64Array(1024);
/** Those behind, seen by one who walks the other way. */
let turned = new Float64Array(1024);
/** Numbers in both lists. */
let sizeAhead = 0;
let sizeBack = 0;
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
  const acrossX = (gap.bx - gap.ax) / gap.width;
  const acrossY = (gap.by - gap.ay) / gap.width;
  const x = (gap.ax + gap.bx) / 2;
  const y = (gap.ay + gap.by) / 2;
  edgesAround(x, y, acrossX, acrossY, nearby, threshold, reach);
  const ahead = endAt(walkAhead(edges, sizeAhead, threshold, reach, gap.width / 2), 1, x, y, acrossX, acrossY);
  const back = endAt(walkAhead(turned, sizeBack, threshold, reach, gap.width / 2), -1, x, y, acrossX, acrossY);
  return { x, y, acrossX, acrossY, back, ahead, length: ahead.offset - back.offset };
}

function endAt(
  { s, isOpen, low, high }: WalkEnd,
  sign: 1 | -1,
  middleX: number,
  middleY: number,
  acrossX: number,
  acrossY: number,
): StretchEnd {
  const offset = sign * s;
  const x = middleX - acrossY * offset;
  const y = middleY + acrossX * offset;
  return { offset, isOpen, ax: x + acrossX * low, ay: y + acrossY * low, bx: x + acrossX * high, by: y + acrossY * high };
}

/** Lists the edges near the middle line, ahead and behind; one that lies a threshold away on one side narrows nothing. */
function edgesAround(
  middleX: number,
  middleY: number,
  acrossX: number,
  acrossY: number,
  nearby: readonly Part[],
  threshold: number,
  reach: number,
): void {
  let most = 0;
  for (const { xy } of nearby) most += xy.length / 2;
  makeRoom(most);
  sizeAhead = 0;
  sizeBack = 0;
  for (const { xy } of nearby) {
    const count = xy.length === 4 ? 1 : xy.length / 2;
    for (let i = 0; i < count; i++) {
      const k = (2 * i + 2) % xy.length;
      const px = (xy[2 * i] as number) - middleX;
      const py = (xy[2 * i + 1] as number) - middleY;
      const qx = (xy[k] as number) - middleX;
      const qy = (xy[k + 1] as number) - middleY;
      const h1 = px * acrossX + py * acrossY;
      const h2 = qx * acrossX + qy * acrossY;
      if ((h1 >= threshold && h2 >= threshold) || (h1 <= -threshold && h2 <= -threshold)) continue;
      const s1 = py * acrossX - px * acrossY;
      const s2 = qy * acrossX - qx * acrossY;
      if ((s1 > reach && s2 > reach) || (s1 < -reach && s2 < -reach)) continue;
      const isOnward = s1 <= s2;
      const least = isOnward ? s1 : s2;
      const most = isOnward ? s2 : s1;
      const hLeast = isOnward ? h1 : h2;
      const hMost = isOnward ? h2 : h1;
      // An edge that ends behind where the walk starts is nothing to it.
      if (most >= -SAME) {
        edges[sizeAhead] = least;
        edges[sizeAhead + 1] = hLeast;
        edges[sizeAhead + 2] = most;
        edges[sizeAhead + 3] = hMost;
        sizeAhead += EDGE;
      }
      if (least <= SAME) {
        turned[sizeBack] = -most;
        turned[sizeBack + 1] = hMost;
        turned[sizeBack + 2] = -least;
        turned[sizeBack + 3] = hLeast;
        sizeBack += EDGE;
      }
    }
  }
}

interface WalkEnd {
  readonly s: number;
  readonly isOpen: boolean;
  readonly low: number;
  readonly high: number;
}

/** Walks from 0 to where the width across reaches the threshold or something stands in the middle. */
function walkAhead(list: Float64Array, size: number, threshold: number, reach: number, half: number): WalkEnd {
  const count = eventsOf(list, size, reach);
  let low = -half;
  let high = half;
  let next = 0;
  for (let from = 0; from < reach; ) {
    while (next < count && (events[next] as number) <= from) next++;
    const to = next < count ? (events[next] as number) : reach;
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

/** Lists in order where within `reach` (mm) an edge ends or runs through the middle line, where the way ends. @returns how many */
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
  sortFew(events, 0, count);
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
export function isInStretch({ x, y, acrossX, acrossY, back, ahead }: Stretch, gap: Gap): boolean {
  const ax = gap.ax - x;
  const ay = gap.ay - y;
  const bx = gap.bx - x;
  const by = gap.by - y;
  if ((ax * acrossX + ay * acrossY) * (bx * acrossX + by * acrossY) > 0) return false;
  const offset = ((ay + by) * acrossX - (ax + bx) * acrossY) / 2;
  const slack = 1;
  return offset >= back.offset - slack && offset <= ahead.offset + slack;
}

/** mm between two segments' nearest points, here the ends of two stretches. */
export function betweenEnds(p: StretchEnd, q: StretchEnd): number {
  return Math.min(toSegment(p.ax, p.ay, q), toSegment(p.bx, p.by, q), toSegment(q.ax, q.ay, p), toSegment(q.bx, q.by, p));
}

function toSegment(x: number, y: number, { ax, ay, bx, by }: StretchEnd): number {
  const ex = bx - ax;
  const ey = by - ay;
  const square = ex * ex + ey * ey;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / square));
  const dx = x - ax - t * ex;
  const dy = y - ay - t * ey;
  return Math.sqrt(dx * dx + dy * dy);
}
