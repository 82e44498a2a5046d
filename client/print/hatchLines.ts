import type { AreaCode } from '#model/catalogue/areas.ts';
import { edges } from '#model/geometry/polygon.ts';
import { dot, lerp, type Point } from '#model/geometry/vec.ts';
import { type HatchWay, hatchWays } from '../plan/draw/hatch.ts';
import { type Mark, round, strokes, weights } from './marks.ts';

/** mm between the lines */
const STEP = 1.5;
const HALF = Math.SQRT1_2;
/** Across the lines of each way. */
const normals: Readonly<Record<HatchWay, Point>> = {
  level: { x: 0, y: 1 },
  upright: { x: 1, y: 0 },
  rising: { x: HALF, y: HALF },
  falling: { x: HALF, y: -HALF },
};

/** The hatch of an area inside a ring (mm on paper), cut at its edges. What lies in `holes` stays bare of lines. */
export function hatchOf(
  ring: readonly Point[],
  kind: AreaCode | 'uncounted' | 'unseen',
  step = STEP,
  holes: readonly (readonly Point[])[] = [],
): Mark[] {
  if (kind === 'AR') return dotsIn(ring, step);
  return [
    strokes(
      hatchWays[kind].flatMap((way) => linesIn(ring, normals[way], step, holes)),
      weights.hatch,
    ),
  ];
}

/** Parallel lines inside a ring of any form: where each crosses the edges it goes in and out by turns. */
function linesIn(
  ring: readonly Point[],
  normal: Point,
  step: number,
  holes: readonly (readonly Point[])[] = [],
): (readonly [Point, Point])[] {
  const along = { x: -normal.y, y: normal.x };
  const offs = ring.map((p) => dot(p, normal));
  const [least, most] = [Math.min(...offs), Math.max(...offs)];
  // Lines hang on the middle of the ring: a narrow one has them on both sides alike.
  const count = Math.floor((most - least) / step);
  const first = (least + most) / 2 - ((count - 1) * step) / 2;
  const found: (readonly [Point, Point])[] = [];
  for (let i = 0; i < count; i++) {
    const off = first + i * step;
    const crossings = [ring, ...holes]
      .flatMap(edges)
      .flatMap(({ a, b }) => {
        const [from, to] = [dot(a, normal) - off, dot(b, normal) - off];
        return from < 0 === to < 0 ? [] : [lerp(a, b, from / (from - to))];
      })
      .sort((p, q) => dot(p, along) - dot(q, along));
    for (let k = 0; k + 1 < crossings.length; k += 2) found.push([crossings[k] as Point, crossings[k + 1] as Point]);
  }
  return found;
}

function dotsIn(ring: readonly Point[], step: number): Mark[] {
  const rows = linesIn(ring, normals.level, step);
  return rows.flatMap(([p, q]) => {
    const count = Math.floor(Math.abs(q.x - p.x) / step);
    const first = (p.x + q.x) / 2 - ((count - 1) * step) / 2;
    return Array.from({ length: Math.max(0, count) }, (_, i) => round({ x: first + i * step, y: p.y }, 0.2, { weight: 0, fill: 'black' }));
  });
}
