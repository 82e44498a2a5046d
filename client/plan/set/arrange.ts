import { add, dot, type Point, scale, sub, turn } from '#model/geometry/vec.ts';
import { axesOf, cornersOf, reachAlong, spanAlong, type TurnedBox, tidyDegrees } from '../box.ts';
import { keepInside, type SnapScene } from '../snap.ts';

/** A thing of a set: mm, degrees clockwise. */
export interface SetBox extends TurnedBox {
  readonly id: string;
}

/** The box round several things, turned as asked. */
export function boxRound(boxes: readonly TurnedBox[], rotation: number): TurnedBox {
  const { u, v } = axesOf(rotation);
  const corners = boxes.flatMap(cornersOf);
  const [u0, u1] = spanAlong(corners, u);
  const [v0, v1] = spanAlong(corners, v);
  const centre = add(scale(u, (u0 + u1) / 2), scale(v, (v0 + v1) / 2));
  return { ...centre, width: u1 - u0, depth: v1 - v0, rotation };
}

export const shifted = <B extends TurnedBox>(boxes: readonly B[], by: Point): B[] => boxes.map((box) => ({ ...box, ...add(box, by) }));

/** All turned about one point, degrees clockwise. */
export function turnedAbout<B extends TurnedBox>(boxes: readonly B[], middle: Point, degrees: number): B[] {
  return boxes.map((box) => ({
    ...box,
    ...add(middle, turn(sub(box, middle), degrees)),
    rotation: tidyDegrees(box.rotation + degrees),
  }));
}

/** Left and right of the sheet changed about an upright line. What was the front is the mirrored front. */
export function mirrored<B extends TurnedBox>(boxes: readonly B[], middle: number): B[] {
  return boxes.map((box) => ({ ...box, x: 2 * middle - box.x, rotation: tidyDegrees(-box.rotation) }));
}

/**
 * Side by side with a gap (mm) from each to the next, backs in the line of the first and turned as it is. The first stays; the
 * others keep the order in which they stand along that line.
 */
export function inARow<B extends TurnedBox>(boxes: readonly B[], gap = 0): B[] {
  const [first] = boxes;
  if (!first) return [];
  const { u, v } = axesOf(first.rotation);
  const back = dot(first, v) - first.depth / 2;
  const order = [...boxes].sort((p, q) => dot(p, u) - dot(q, u));
  const at = order.indexOf(first);
  const along = new Map<B, number>([[first, dot(first, u)]]);
  const follow = (others: readonly B[], sign: 1 | -1): void => {
    let end = dot(first, u) + (sign * first.width) / 2;
    for (const box of others) {
      along.set(box, end + sign * (gap + box.width / 2));
      end += sign * (gap + box.width);
    }
  };
  follow(order.slice(at + 1), 1);
  follow(order.slice(0, at).reverse(), -1);
  return boxes.map((box) => {
    const centre = add(scale(u, along.get(box) ?? 0), scale(v, back + box.depth / 2));
    return { ...box, ...centre, rotation: first.rotation };
  });
}

export type Spaced<B> =
  | { readonly isDone: true; readonly boxes: B[]; readonly gap: number }
  | { readonly isDone: false; readonly short: number };

/**
 * The same gap (mm) between each and the next; the two outermost stay. Along the line of the first or across it, whichever the
 * things are strung out on. `short`: how many mm they are too long for that.
 */
export function evenly<B extends TurnedBox>(boxes: readonly B[]): Spaced<B> {
  const [first] = boxes;
  if (!first) return { isDone: true, boxes: [], gap: 0 };
  const { u, v } = axesOf(first.rotation);
  const spread = (axis: Point): number => {
    const [least, greatest] = spanAlong(boxes, axis);
    return greatest - least;
  };
  const axis = spread(u) >= spread(v) ? u : v;
  const order = [...boxes].sort((p, q) => dot(p, axis) - dot(q, axis));
  const [least, greatest] = spanAlong(order.flatMap(cornersOf), axis);
  const sizes = order.map((box) => 2 * reachAlong(box, axis));
  const free = greatest - least - sizes.reduce((sum, size) => sum + size, 0);
  const gap = free / Math.max(1, order.length - 1);
  if (gap < -0.5) return { isDone: false, short: -free };
  const moved = new Map<B, B>();
  let at = least;
  order.forEach((box, i) => {
    const size = sizes[i] ?? 0;
    moved.set(box, { ...box, ...add(box, scale(axis, at + size / 2 - dot(box, axis))) });
    at += size + gap;
  });
  return { isDone: true, boxes: boxes.map((box) => moved.get(box) ?? box), gap };
}

/** The gap (mm, whole cm) that things have between each and the next on average, as they are strung out; null: they touch or overlap. */
export function averageGap(boxes: readonly TurnedBox[]): number | null {
  const spaced = evenly(boxes);
  const gap = spaced.isDone ? Math.round(spaced.gap / 10) * 10 : 0;
  return gap > 0 ? gap : null;
}

const ROUNDS = 6;
/** mm: less than this is no move */
const NOTHING = 1;

/**
 * All shifted alike, as little as brings them into the room; null: they do not fit. What stood outside before, as something in
 * a doorway does, holds nothing back.
 */
export function keptTogether<B extends SetBox>(
  boxes: readonly B[],
  room: Pick<SnapScene, 'outline' | 'walls'>,
  before: ReadonlyMap<string, TurnedBox>,
): B[] | null {
  const bound = boxes.filter((box) => {
    const was = before.get(box.id);
    return !was || away(keepInside(was, room), was) < NOTHING;
  });
  let shift = { x: 0, y: 0 };
  for (let round = 0; round < ROUNDS; round++) {
    let isMoved = false;
    for (const box of bound) {
      const at = { ...box, ...add(box, shift) };
      const push = sub(keepInside(at, room), at);
      if (Math.hypot(push.x, push.y) < 1e-6) continue;
      shift = add(shift, push);
      isMoved = true;
    }
    if (!isMoved) return shifted(boxes, shift);
  }
  const last = shifted(bound, shift);
  return last.every((box) => away(keepInside(box, room), box) < NOTHING) ? shifted(boxes, shift) : null;
}

const away = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);
