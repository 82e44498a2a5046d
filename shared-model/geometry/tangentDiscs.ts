import { blockedBetween, type FrontLine, lengthOf, pointBefore, type SeenPart, seePart, tangentDiameter } from './frontLine.ts';
import type { Part } from './parts.ts';
import { sortFew } from './sortFew.ts';
import type { Point } from './vec.ts';
import { workDone } from './workDone.ts';

/** A disc that touches a front at u mm along it and is as large as what stands round it lets it be, up to a limit. */
export interface TangentDisc {
  readonly u: number;
  readonly diameter: number;
  readonly center: Point;
}

/** What stands before a front, for discs up to `limit` mm. */
export interface FrontView {
  readonly front: FrontLine;
  readonly length: number;
  readonly limit: number;
  readonly seen: readonly SeenPart[];
  /** True on floor: in the room and in no solid. Asked just before the front's line. */
  readonly isFloor: (p: Point) => boolean;
}

/** mm before the line where the floor is looked for. */
const JUST_BEFORE = 0.01;
/** mm: how exactly the place of a largest disc is found; its diameter is then right to about 0.01. */
const PLACE = 1e-5;

/** @param nearby parts that may come within `limit` mm of the front. */
export function viewFront(front: FrontLine, nearby: readonly Part[], limit: number, isFloor: (p: Point) => boolean): FrontView {
  const length = lengthOf(front);
  const seen: SeenPart[] = [];
  for (const part of nearby) {
    const one = seePart(front, part, limit, length);
    const blocked = one && blockedBetween(one, limit);
    if (one && blocked && blocked[0] < length && blocked[1] > 0) seen.push(one);
  }
  return { front, length, limit, seen, isFloor };
}

/** The stretches of the front, [from, to] in mm along it, that a disc of this diameter (at most the view's limit) can touch. */
export function freeStretches(view: FrontView, diameter: number): [number, number][] {
  const slack = 1e-6; // an exact fit fits
  const blocked: [number, number][] = [];
  for (const one of view.seen) {
    const range = blockedBetween(one, diameter - slack);
    if (range) blocked.push(range);
  }
  blocked.sort((p, q) => p[0] - q[0]);
  const free: [number, number][] = [];
  let from = 0;
  const keep = (to: number): void => {
    if (to < from) return;
    if (view.isFloor(pointBefore(view.front, (from + to) / 2, JUST_BEFORE))) free.push([from, to]);
  };
  for (const [start, end] of blocked) {
    keep(Math.min(start, view.length));
    from = Math.max(from, end);
    if (from > view.length) return free;
  }
  keep(view.length);
  return free;
}

/**
 * The largest discs along the front, one at each place where moving aside makes them smaller (or, at the limit, no
 * larger). Between the places where parts come nearest, each part's own bound only rises or only falls along the
 * front, so their least has one summit, found by bracketing: nothing is sampled and nothing missed.
 */
export function largestDiscs(view: FrontView): TangentDisc[] {
  workDone.fronts++;
  const marks = marksAlong(view);
  const summits: { u: number; diameter: number; valley: number }[] = [];
  for (let k = 0; k + 1 < marks.length; k++) {
    const from = marks[k] as number;
    const to = marks[k + 1] as number;
    const found = summitBetween(view, from, to);
    const diameter = found.diameter > 0 && view.isFloor(pointBefore(view.front, (from + to) / 2, JUST_BEFORE)) ? found.diameter : 0;
    const valley = diameter === 0 ? 0 : diameterAt(view, to);
    const last = summits[summits.length - 1];
    if (!last || last.valley < Math.min(last.diameter, diameter) - 1e-9) summits.push({ u: found.u, diameter, valley });
    else if (diameter > last.diameter) {
      last.u = found.u;
      last.diameter = diameter;
      last.valley = valley;
    } else last.valley = Math.min(last.valley, valley);
  }
  const discs: TangentDisc[] = [];
  for (const { u, diameter } of summits) if (diameter > 0) discs.push(discAt(view.front, u, diameter));
  return discs;
}

function discAt(front: FrontLine, u: number, diameter: number): TangentDisc {
  return { u, diameter, center: pointBefore(front, u, diameter / 2) };
}

/** Diameter (mm, at most the limit) of the largest disc that touches the front at u. */
function diameterAt(view: FrontView, u: number): number {
  let least = view.limit;
  for (const one of view.seen) if (one.low < least) least = Math.min(least, tangentDiameter(one, u));
  return least;
}

function marksAlong({ seen, length }: FrontView): number[] {
  const marks = [0, length];
  for (const { lowFrom, lowTo } of seen) {
    if (lowFrom > 0 && lowFrom < length) marks.push(lowFrom);
    if (lowTo > 0 && lowTo < length) marks.push(lowTo);
  }
  sortFew(marks, 0, marks.length);
  let count = 1;
  for (let k = 1; k < marks.length; k++) if ((marks[k] as number) > (marks[count - 1] as number)) marks[count++] = marks[k] as number;
  marks.length = count;
  return marks;
}

/** Used again for each stretch of each front. */
const rising: SeenPart[] = [];
const falling: SeenPart[] = [];

function summitBetween(view: FrontView, from: number, to: number): { u: number; diameter: number } {
  const middle = (from + to) / 2;
  let cap = view.limit;
  rising.length = 0;
  falling.length = 0;
  for (const one of view.seen) {
    if (one.lowTo <= middle) rising.push(one);
    else if (one.lowFrom >= middle) falling.push(one);
    else cap = Math.min(cap, one.low);
  }
  if (cap === 0) return { u: middle, diameter: 0 };
  const atMiddle = Math.min(least(rising, middle), least(falling, middle));
  if (atMiddle >= cap) return { u: middle, diameter: cap };
  const riseAtTo = least(rising, to);
  if (riseAtTo <= least(falling, to)) return { u: to, diameter: Math.min(cap, riseAtTo) };
  const fallAtFrom = least(falling, from);
  if (fallAtFrom <= least(rising, from)) return { u: from, diameter: Math.min(cap, fallAtFrom) };
  return crossing(from, to, cap);
}

function least(side: readonly SeenPart[], u: number): number {
  let value = Infinity;
  for (const one of side) if (one.low < value) value = Math.min(value, tangentDiameter(one, u));
  return value;
}

/** Where the rising bound meets the falling one: secant steps kept inside a bracket that halves when they stall. */
function crossing(from: number, to: number, cap: number) {
  let low = from;
  let high = to;
  let atLow = least(rising, low) - least(falling, low);
  let atHigh = least(rising, high) - least(falling, high);
  const best = { u: low, diameter: 0 };
  for (let step = 0; step < 80 && high - low > PLACE; step++) {
    const secant = low - (atLow * (high - low)) / (atHigh - atLow);
    const isUsable = step % 3 !== 2 && secant > low && secant < high;
    const u = isUsable ? secant : (low + high) / 2;
    const rise = least(rising, u);
    const fall = least(falling, u);
    const diameter = Math.min(rise, fall);
    if (diameter >= cap) return { u, diameter: cap };
    if (diameter > best.diameter) {
      best.u = u;
      best.diameter = diameter;
    }
    if (Math.abs(rise - fall) < 1e-4) break;
    if (rise < fall) {
      low = u;
      atLow = rise - fall;
    } else {
      high = u;
      atHigh = rise - fall;
    }
  }
  return best;
}
