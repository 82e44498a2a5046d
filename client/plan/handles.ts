import { add, distance, dot, lerp, type Point, scale, sub } from '#model/geometry/vec.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Side } from '#model/schema/types.ts';
import { axesOf } from './box.ts';
import { toScreen, type Viewport } from './viewport.ts';

export interface Handle {
  readonly what: Side | 'turn';
  /** px */
  readonly at: Point;
  /** px: foot of its stem, the middle of that side; for one without a stem the same place */
  readonly foot: Point;
}

/** mm: no thing is made smaller than this by hand */
const LEAST = 100;
/** px: a side shorter than this has no room for a handle at its middle */
const ROOM_FOR_HANDLE = 52;
/** px: how far off the turning handle may stand, the usual first */
const STEMS: readonly number[] = [30, 22, 42, 54, 68, 84];
/** px: the ring of a finger's handle */
const RING = 11;
/** px between the rings of two opposite handles: so much of a thing is left for a finger that slides it */
const TO_GRAB = 44;

/** px of the screen that words take, as a circle round their middle. */
export interface WordsAt {
  readonly at: Point;
  readonly radius: number;
}

/**
 * Handles of the chosen thing: at its ends, at front and back when they are far enough apart, and one to turn it by, as
 * far before its front as leaves the words of other things to be read. For a finger those of a small thing stand outside
 * it, so that it can still be slid.
 */
export function handlesOf(body: SceneBody, view: Viewport, words: readonly WordsAt[] = [], isTouch = false): Handle[] {
  const middle = (side: Side): Point => toScreen(view, lerp(body.edges[side].a, body.edges[side].b, 0.5));
  const outside = (length: number): number => (isTouch ? Math.max(0, TO_GRAB / 2 + RING - (length * view.k) / 2) : 0);
  const beside = (side: Side): Handle => {
    const foot = middle(side);
    const off = outside(side === 'left' || side === 'right' ? body.width : body.depth);
    return { what: side, at: add(foot, scale(body.edges[side].outward, off)), foot };
  };
  const sides: Side[] = [];
  if (body.width * view.k >= 18) sides.push('left', 'right');
  if (body.depth * view.k >= ROOM_FOR_HANDLE) sides.push('front', 'back');
  const front = middle('front');
  const out = body.edges.front.outward;
  // Not on the ring of the handle at the front itself.
  const nearest = sides.includes('front') && isTouch ? outside(body.depth) + 2 * RING + 2 : 0;
  const places = STEMS.filter((stem) => stem >= nearest).map((stem) => add(front, scale(out, stem)));
  const free = places.find((place) => words.every(({ at, radius }) => distance(place, at) >= radius + RING));
  const stem: Handle = { what: 'turn', at: free ?? (places[0] as Point), foot: front };
  return [...sides.map(beside), stem];
}

/** The handle within `reach` px of a point; the nearest, so that large catching areas may overlap. */
export function handleAt(handles: readonly Handle[], p: Point, reach: number): Handle | null {
  let best: Handle | null = null;
  for (const handle of handles) {
    const away = distance(handle.at, p);
    if (away <= reach && (!best || away < distance(best.at, p))) best = handle;
  }
  return best;
}

type Sized = { x: number; y: number; width: number; depth: number; rotation: number };

/** The box with one side drawn to a point (mm, whole cm) while the opposite side stays. */
export function resized(box: Sized, side: Side, p: Point): Pick<Sized, 'x' | 'y' | 'width' | 'depth'> {
  const { u, v } = axesOf(box.rotation);
  const isAcross = side === 'left' || side === 'right';
  const axis = isAcross ? u : v;
  const sign = side === 'right' || side === 'front' ? 1 : -1;
  const before = isAcross ? box.width : box.depth;
  const fixed = dot(sub(p, box), axis) * sign + before / 2;
  const after = Math.max(LEAST, Math.round(fixed / 10) * 10);
  const centre = add(box, scale(axis, (sign * (after - before)) / 2));
  return { x: centre.x, y: centre.y, width: isAcross ? after : box.width, depth: isAcross ? box.depth : after };
}

/** Degrees at which a thing's front points to p: in steps of 15, or free. */
export function turnedTowards(centre: Point, p: Point, isFree: boolean): number {
  const d = sub(p, centre);
  const degrees = (Math.atan2(-d.x, d.y) * 180) / Math.PI;
  const step = isFree ? 1 : 15;
  return (((Math.round(degrees / step) * step) % 360) + 360) % 360;
}
