import { boundingBox } from '#model/geometry/polygon.ts';
import { add, type Point, type Segment, scale, sub } from '#model/geometry/vec.ts';
import { axesOf, cornersOf, reachAlong, type TurnedBox } from './box.ts';
import type { SnapScene } from './snap.ts';

/** How far a side of a thing is from what stands before it. */
export interface NearDistance {
  readonly from: Point;
  readonly to: Point;
  /** mm */
  readonly mm: number;
}

/** mm: what is farther off than this is not near. */
const FAR = 3000;

/**
 * From each side of the box the way to the first wall or thing straight before it.
 * A ray from the middle of a side, or, where that meets nothing near, from its two ends.
 */
export function nearDistances(box: TurnedBox, scene: SnapScene): NearDistance[] {
  const { u, v } = axesOf(box.rotation);
  const segments = segmentsNear(box, scene);
  return [u, scale(u, -1), v, scale(v, -1)].flatMap((direction): NearDistance[] => {
    const nearest = distanceToward(box, direction, segments);
    // Touching needs no string.
    return nearest && nearest.mm >= 1 && nearest.mm <= FAR ? [nearest] : [];
  });
}

/** The way from a box straight to the first segment in a direction (a unit vector); null: nothing there. */
export function distanceToward(box: TurnedBox, direction: Point, segments: readonly Segment[]): NearDistance | null {
  const across = { x: -direction.y, y: direction.x };
  const half = reachAlong(box, across) - 1;
  const face = add(box, scale(direction, reachAlong(box, direction)));
  let best: NearDistance | null = null;
  for (const share of [0, -0.5, 0.5, -1, 1]) {
    const from = add(face, scale(across, share * half));
    const hit = firstHit(from, direction, segments);
    if (hit === null || (best && hit >= best.mm - 0.5)) continue;
    best = { from, to: add(from, scale(direction, hit)), mm: hit };
  }
  return best;
}

function segmentsNear(box: TurnedBox, scene: SnapScene): Segment[] {
  const own = boundingBox(cornersOf(box));
  const near = scene.others.filter((other) => {
    const reach = Math.hypot(other.width, other.depth) / 2 + FAR;
    return other.x > own.minX - reach && other.x < own.maxX + reach && other.y > own.minY - reach && other.y < own.maxY + reach;
  });
  return [...scene.walls, ...near.flatMap((other) => ringSegments(cornersOf(other)))];
}

const ringSegments = (ring: readonly Point[]): Segment[] => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length] ?? a }));

/** mm along a unit direction to the first segment it meets; null: none. */
function firstHit(from: Point, direction: Point, segments: readonly Segment[]): number | null {
  let least: number | null = null;
  for (const { a, b } of segments) {
    const run = sub(b, a);
    const det = direction.x * run.y - direction.y * run.x;
    if (Math.abs(det) < 1e-9) continue;
    const gap = sub(a, from);
    const ahead = (gap.x * run.y - gap.y * run.x) / det;
    const along = (gap.x * direction.y - gap.y * direction.x) / det;
    if (ahead < -0.5 || along < 0 || along > 1) continue;
    if (least === null || ahead < least) least = Math.max(0, ahead);
  }
  return least;
}
