import { type Closest, closestOfParts } from '../geometry/closest.ts';
import { makePart } from '../geometry/parts.ts';
import { minus, type Patch, patchesOf, pointInside, type Region } from '../geometry/region.ts';
import type { Point } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import { enteredFloor } from './walkFloor.ts';
import { WaysField } from './waysField.ts';

/** Floor that a child's body reaches and an adult's does not. */
export interface Pocket extends Patch {
  readonly at: Point;
  /** What it lies between: ids of the two nearest things; the wall's twice where there is nothing else. */
  readonly between: readonly [string, string];
}

/**
 * The largest first. Exact where a gap leads to them or lies between faces that run alike; of a wedge that narrows
 * only what lies behind its narrowest place counts. @param child @param adult mm, diameters of the bodies
 */
export function measurePockets(scene: Scene, child: number, adult: number): Pocket[] {
  if (!scene.room.isSound) return [];
  const field = WaysField.of(scene, 'pushed in');
  return patchesOf(minus(ringsOf(enteredFloor(scene, child)), ringsOf(enteredFloor(scene, adult)))).map((patch) => {
    const at = pointInside(patch);
    return { ...patch, at, between: nearestTwo(field, at) };
  });
}

const ringsOf = (patches: readonly Patch[]): Region => patches.flatMap(({ outline, holes }) => [outline, ...holes]);

function nearestTwo(field: WaysField, p: Point): [string, string] {
  const center = makePart('', [p]);
  const closest: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  const byId = new Map<string, number>();
  for (const part of field.parts) {
    closestOfParts(center, part, closest);
    byId.set(part.id, Math.min(byId.get(part.id) ?? Infinity, closest.distance));
  }
  const [first, second] = [...byId].sort((a, b) => a[1] - b[1]).map(([id]) => id);
  return [first ?? '', second ?? first ?? ''];
}
