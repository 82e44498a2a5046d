import { placesBefore, type Stretch, sharedStretches, takenBefore } from '../geometry/frontBand.ts';
import { type FrontLine, lengthOf, pointBefore } from '../geometry/frontLine.ts';
import type { Part } from '../geometry/parts.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { distance } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import { accessibleRoutes } from '../standards/accessibleRoutes.ts';
import { leastThatMeets } from '../units/compare.ts';
import { type Target, targetsOf } from './targets.ts';
import { WaysField } from './waysField.ts';

const { clearFloor, alcove } = accessibleRoutes;
const printed = (mm: number): number => leastThatMeets(mm, true);

/** One way to stand before a front, mm: across it, and out from it. Boxed in deeper than `ifDeeper` it must be `wider`. */
interface Stance {
  readonly width: number;
  readonly depth: number;
  readonly wider: number;
  readonly ifDeeper: number;
}
const forward: Stance = {
  width: printed(clearFloor.width),
  depth: printed(clearFloor.length),
  wider: printed(alcove.forward.width),
  ifDeeper: alcove.forward.ifDeeper,
};
const parallel: Stance = {
  width: printed(clearFloor.length),
  depth: printed(clearFloor.width),
  wider: printed(alcove.parallel.width),
  ifDeeper: alcove.parallel.ifDeeper,
};

export interface StandingPlace {
  readonly target: Target;
  readonly has: boolean;
  /** mm: the widest free place as deep as a wheelchair is long */
  readonly widest: number;
}

/**
 * For each front whether a wheelchair can stand before it, head on or alongside, its middle before the front. Exact.
 * Chairs are pushed in: whoever comes by wheelchair sits in it. Null where the walls do not hold.
 */
export function measureStandingPlaces(scene: Scene): StandingPlace[] | null {
  if (!scene.room.isSound) return null;
  const field = WaysField.of(scene, 'pushed in');
  return targetsOf(scene, 'pushed in')
    .filter((target) => target.kind !== 'door')
    .map((target) => {
      const lines = target.lines.map((line) => ({ line, parts: partsNear(field, line) }));
      const has = lines.some(({ line, parts }) => [forward, parallel].some((stance) => fits(field, line, parts, stance)));
      return { target, has, widest: has ? forward.width : Math.max(0, ...lines.map(({ line, parts }) => widestRun(line, parts))) };
    });
}

function partsNear(field: WaysField, line: FrontLine): Part[] {
  return field.grid.near(boundingBox([line.a, line.b]), 2 * clearFloor.length).flatMap((index) => field.parts[index] ?? []);
}

function fits(field: WaysField, line: FrontLine, parts: readonly Part[], { width, depth, wider, ifDeeper }: Stance): boolean {
  const length = lengthOf(line);
  const whole = placesBefore(line, length, parts, width, 0, depth);
  // Not boxed in beyond the first part of its depth, the wider place there may lie a little to either side.
  const beyond = placesBefore(stretched(line, wider), length + 2 * wider, parts, wider, ifDeeper, depth).map(
    ([a, b]): Stretch => [a - wider, b - wider],
  );
  const places = sharedStretches(whole, beyond, (wider - width) / 2);
  return places.some(([from, to]) => field.isOpenFloor(pointBefore(line, (from + to) / 2, 1)));
}

/** The same line, longer by `by` mm at both ends. */
const stretched = (line: FrontLine, by: number): FrontLine => {
  const length = lengthOf(line);
  return { a: pointBefore(line, -by, 0), b: pointBefore(line, length + by, 0), outward: line.outward };
};

/** mm of the longest stretch free as deep as a wheelchair is long, of those whose middle lies before the front. */
function widestRun(line: FrontLine, parts: readonly Part[]): number {
  const length = distance(line.a, line.b);
  const taken = takenBefore(line, parts, 0, forward.depth).sort((p, q) => p.from - q.from);
  let widest = 0;
  let from = -Infinity;
  for (const one of [...taken, { from: Infinity, to: Infinity }]) {
    const middle = (from + one.from) / 2;
    if (one.from > from && middle >= 0 && middle <= length) widest = Math.max(widest, one.from - from);
    from = Math.max(from, one.to);
  }
  return widest;
}
