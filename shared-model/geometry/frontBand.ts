import { type FrontLine, seePart } from './frontLine.ts';
import type { Part } from './parts.ts';

/** mm: what only touches the edge of a place does not stand in it */
const TOUCH = 0.01;

/** A stretch along a front, mm from its left end. */
export type Stretch = readonly [from: number, to: number];

/** Where along a front something stands between `near` and `far` mm before it, with whose it is; in no order. */
export function takenBefore(
  front: FrontLine,
  parts: readonly Part[],
  near: number,
  far: number,
): { id: string; from: number; to: number; nearest: number }[] {
  return parts.flatMap((part) => {
    const uv = seePart(front, part)?.uv;
    if (!uv) return [];
    let from = Infinity;
    let to = -Infinity;
    let nearest = Infinity;
    const take = (u: number, v: number): void => {
      from = Math.min(from, u);
      to = Math.max(to, u);
      nearest = Math.min(nearest, v);
    };
    const [low, high] = [near + TOUCH, far - TOUCH];
    for (let i = 0; i < uv.length; i += 2) {
      const j = (i + 2) % uv.length;
      const [u, v, p, q] = [uv[i] as number, uv[i + 1] as number, uv[j] as number, uv[j + 1] as number];
      if (v >= low && v <= high) take(u, v);
      for (const level of [low, high]) if (v < level !== q < level) take(u + ((p - u) * (level - v)) / (q - v), level);
    }
    return from > to ? [] : [{ id: part.id, from, to, nearest: nearest <= low ? near : nearest }];
  });
}

/**
 * Where along a front the middle of a free place may lie that is `width` mm wide and runs from `near` to `far` mm
 * before it; its middle stays within the front's own length.
 */
export function placesBefore(
  front: FrontLine,
  length: number,
  parts: readonly Part[],
  width: number,
  near: number,
  far: number,
): Stretch[] {
  const blocked = takenBefore(front, parts, near, far)
    .map(({ from, to }): Stretch => [from - width / 2 + TOUCH, to + width / 2 - TOUCH])
    .sort((p, q) => p[0] - q[0]);
  const free: Stretch[] = [];
  let from = 0;
  for (const [start, end] of blocked) {
    if (start >= from) free.push([from, Math.min(start, length)]);
    from = Math.max(from, end);
    if (from > length) return free;
  }
  free.push([from, length]);
  return free;
}

/** What two lists of stretches share, the second widened by `by` mm at both ends. */
export function sharedStretches(one: readonly Stretch[], other: readonly Stretch[], by = 0): Stretch[] {
  return one.flatMap(([a, b]) =>
    other.flatMap(([c, d]): Stretch[] => {
      const [from, to] = [Math.max(a, c - by), Math.min(b, d + by)];
      return from <= to ? [[from, to]] : [];
    }),
  );
}
