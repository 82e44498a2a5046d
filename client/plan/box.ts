import { add, dot, type Point, scale, turn } from '#model/geometry/vec.ts';

/** A turned rectangle on the plan: centre, mm, degrees clockwise. */
export interface TurnedBox extends Point {
  readonly width: number;
  readonly depth: number;
  readonly rotation: number;
}

export interface Axes {
  /** along the width */
  readonly u: Point;
  /** along the depth, towards the front */
  readonly v: Point;
}

export const axesOf = (rotation: number): Axes => ({ u: turn({ x: 1, y: 0 }, rotation), v: turn({ x: 0, y: 1 }, rotation) });

/** mm from the centre to the farthest corner along a unit direction. */
export function reachAlong(box: Pick<TurnedBox, 'width' | 'depth' | 'rotation'>, direction: Point): number {
  const { u, v } = axesOf(box.rotation);
  return (Math.abs(dot(u, direction)) * box.width + Math.abs(dot(v, direction)) * box.depth) / 2;
}

/** The four corners, clockwise from back left. */
export function cornersOf(box: TurnedBox): Point[] {
  const { u, v } = axesOf(box.rotation);
  const corner = (i: number, j: number): Point => add(box, add(scale(u, (i * box.width) / 2), scale(v, (j * box.depth) / 2)));
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** Where points lie along a unit direction, from the origin: [least, greatest], mm. */
export function spanAlong(points: readonly Point[], direction: Point): readonly [number, number] {
  let least = Infinity;
  let greatest = -Infinity;
  for (const p of points) {
    const at = dot(p, direction);
    if (at < least) least = at;
    if (at > greatest) greatest = at;
  }
  return [least, greatest];
}

/** 0 up to 360, without the noise of the last digits. */
export function tidyDegrees(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  const whole = Math.round(turned * 100) / 100;
  return whole === 360 ? 0 : whole;
}

/** Lines that differ by less than this (sine of about half a degree) count as parallel. */
export const PARALLEL = 0.009;
