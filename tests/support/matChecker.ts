import { measureWays } from '#model/measures/ways.ts';
import type { Scene } from '#model/scene/types.ts';

/**
 * Checks a laying of mats by other means than the packing: rectangles against rectangles and outlines in the mats' own
 * axes, clearances point by point, and the ways measured before and after. Written for tests; slow and plain.
 */
export interface LaidMat {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
  readonly rotation: number;
}
type XY = readonly [number, number];
/** mm that rounding may cost. */
const SLACK = 0.005;

/** Everything that is wrong with the mats; empty: nothing. */
export function wrongMats(scene: Scene, mats: readonly LaidMat[]): string[] {
  const { gap } = scene.classroom.floorWork;
  const wrongAt = placeChecker(scene);
  const wrong = mats.flatMap((mat, i) => [
    ...wrongAt(mat).map((what) => `mat ${i} ${what}`),
    ...mats.slice(0, i).flatMap((other, j) => (areApart(mat, other, gap) ? [] : [`mats ${j} and ${i} are closer than the gap`])),
  ]);
  return [...wrong, ...lostWays(scene, mats)];
}

/** Tells what is wrong with the place of one mat by itself, ways left out; empty: nothing. */
export function placeChecker(scene: Scene): (mat: LaidMat) => string[] {
  const shapes = obstaclesOf(scene);
  const walls = scene.room.outline.map((p): XY => [p.x, p.y]);
  return (mat) => {
    const wrong: string[] = [];
    if (corners(mat, 0).some((p) => !isInside(walls, p, SLACK))) wrong.push('reaches outside the walls');
    walls.forEach((p, k) => {
      if (lineDepth(mat, p, walls[(k + 1) % walls.length] as XY) > SLACK) wrong.push(`has wall ${k} run through it`);
    });
    for (const { name, outline, isLine } of shapes) {
      const sides = outline.map((p, k) => lineDepth(mat, p, outline[(k + 1) % outline.length] as XY));
      if (Math.max(...sides) > SLACK) wrong.push(`lies on ${name}`);
      else if (!isLine && isInside(outline, [mat.x, mat.y], 0)) wrong.push(`lies under ${name}`);
    }
    return wrong;
  };
}

/** Two mats, each grown by half the gap, share no floor. */
export const areApart = (mat: LaidMat, other: LaidMat, gap: number): boolean =>
  sharedDepth(corners(mat, gap / 2), corners(other, gap / 2)) <= SLACK;

/** Ways that are narrower than they have to be once the mats lie. */
function lostWays(scene: Scene, mats: readonly LaidMat[]): string[] {
  const before = measureWays(scene);
  const after = measureWays(scene, { extra: mats.map((mat) => corners(mat, 0).map(([x, y]) => ({ x, y }))) });
  // 915 is the printed default, 36 in; a class's own figure is taken as it is.
  const { routeWidth } = scene.classroom.access;
  const needed = routeWidth === 915 ? 914.4 : routeWidth;
  return before.flatMap((way, i) => {
    const kept = after[i]?.width ?? 0;
    const least = Math.min(needed, way.width) - 0.01;
    return kept < least ? [`the way to ${way.to} shrinks to ${kept.toFixed(2)}, ${least.toFixed(2)} must stay`] : [];
  });
}

interface Shape {
  readonly name: string;
  readonly outline: readonly XY[];
  /** Only its edges count. */
  readonly isLine: boolean;
}

function obstaclesOf(scene: Scene): Shape[] {
  const shapes: Shape[] = [];
  const add = (name: string, ring: readonly { x: number; y: number }[], isLine = false): void => {
    shapes.push({ name, outline: ring.map((p): XY => [p.x, p.y]), isLine });
  };
  for (const body of scene.bodies) if (body.kind !== 'rug') add(body.id, body.footprint, body.fixture?.walkable === true);
  for (const { raw, swingFloor } of scene.room.openings) if (swingFloor) add(`the leaf of ${raw.id}`, swingFloor);
  for (const { piece, edge } of scene.sides) {
    const depth = scene.classroom.access.frontStrip;
    if (!piece.closed && depth > 0) add(`the strip before ${piece.id}`, before(edge, depth));
  }
  for (const body of scene.bodies) {
    for (const side of ['front', 'back', 'left', 'right'] as const) {
      if ((body.piece?.seatSides[side] ?? 0) > 0 && body.kind === 'table') add(`the seats of ${body.id}`, before(body.edges[side], 483));
    }
  }
  return shapes;
}

const before = ({ a, b, outward }: Scene['sides'][number]['edge'], depth: number) => [
  a,
  b,
  { x: b.x + outward.x * depth, y: b.y + outward.y * depth },
  { x: a.x + outward.x * depth, y: a.y + outward.y * depth },
];

function corners(mat: LaidMat, by: number): XY[] {
  const t = (mat.rotation * Math.PI) / 180;
  const w = mat.width / 2 + by;
  const d = mat.depth / 2 + by;
  return [
    [-w, -d],
    [w, -d],
    [w, d],
    [-w, d],
  ].map(
    ([u, v]): XY => [
      mat.x + (u as number) * Math.cos(t) - (v as number) * Math.sin(t),
      mat.y + (u as number) * Math.sin(t) + (v as number) * Math.cos(t),
    ],
  );
}

/** How deep (mm) a straight line runs inside a mat: the line is cut to the mat's box in the mat's own axes. */
function lineDepth(mat: LaidMat, p: XY, q: XY): number {
  const t = (-mat.rotation * Math.PI) / 180;
  const own = ([x, y]: XY): XY => [
    (x - mat.x) * Math.cos(t) - (y - mat.y) * Math.sin(t),
    (x - mat.x) * Math.sin(t) + (y - mat.y) * Math.cos(t),
  ];
  const a = own(p);
  const b = own(q);
  let from = 0;
  let to = 1;
  for (const [start, end, half] of [
    [a[0], b[0], mat.width / 2],
    [a[1], b[1], mat.depth / 2],
  ] as const) {
    const run = end - start;
    if (Math.abs(run) < 1e-12) {
      if (Math.abs(start) >= half) return 0;
      continue;
    }
    const t1 = (-half - start) / run;
    const t2 = (half - start) / run;
    from = Math.max(from, Math.min(t1, t2));
    to = Math.min(to, Math.max(t1, t2));
  }
  if (from >= to) return 0;
  const middle = (from + to) / 2;
  const x = Math.abs(a[0] + (b[0] - a[0]) * middle);
  const y = Math.abs(a[1] + (b[1] - a[1]) * middle);
  return Math.min(mat.width / 2 - x, mat.depth / 2 - y);
}

/** Least overlap (mm) of two rectangles along the sides of either. */
function sharedDepth(a: readonly XY[], b: readonly XY[]): number {
  let least = Infinity;
  for (const ring of [a, b]) {
    for (const k of [0, 1]) {
      const [px, py] = ring[k] as XY;
      const [qx, qy] = ring[k + 1] as XY;
      const size = Math.hypot(qx - px, qy - py);
      const along = (list: readonly XY[]): number[] => list.map(([x, y]) => (x * (qx - px) + y * (qy - py)) / size);
      const s = along(a);
      const t = along(b);
      least = Math.min(least, Math.min(Math.max(...s), Math.max(...t)) - Math.max(Math.min(...s), Math.min(...t)));
    }
  }
  return least;
}

/** Winding number, with what lies within `slack` of an edge taken as inside. */
function isInside(ring: readonly XY[], [x, y]: XY, slack: number): boolean {
  let turns = 0;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i] as XY;
    const [bx, by] = ring[(i + 1) % ring.length] as XY;
    const squared = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / squared));
    if (Math.hypot(ax + share * (bx - ax) - x, ay + share * (by - ay) - y) <= slack) return true;
    const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (ay <= y && by > y && side > 0) turns++;
    if (ay > y && by <= y && side < 0) turns--;
  }
  return turns !== 0;
}
