import { convexPenetration } from '../geometry/penetration.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { length } from '../geometry/vec.ts';
import { distanceOutside, reachesOutside, shiftsInside } from '../geometry/withinRing.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import { cachedParts } from './overlaps.ts';

/** A thing that reaches through the inner face of the walls. */
export interface Outside {
  readonly body: SceneBody;
  /** mm it has to move to stand inside; where it fits nowhere unturned, how far its farthest corner lies outside */
  readonly by: number;
  readonly fits: boolean;
  /** Nothing of it lies in the room. */
  readonly isWholly: boolean;
}

/** Every piece and fixture that reaches more than `touching` mm outside sound walls, in the scene's order. */
export function measureOutside(scene: Scene, touching: number): Outside[] {
  const { outline, isSound } = scene.room;
  if (!isSound) return [];
  const partsOf = cachedParts();
  return scene.bodies.flatMap((body): Outside[] => {
    const parts = partsOf(body);
    if (!reachesOutside(outline, parts, touching)) return [];
    const isWholly = !meetsRing(outline, parts);
    for (const shift of shiftsInside(outline, parts)) return [{ body, by: length(shift), fits: true, isWholly }];
    const farthest = Math.max(...body.footprint.map((p) => distanceOutside(outline, p)));
    return [{ body, by: farthest, fits: false, isWholly }];
  });
}

function meetsRing(outline: Polygon, parts: readonly Polygon[]): boolean {
  if (parts.some((part) => part.some((p) => distanceOutside(outline, p) === 0))) return true;
  return outline.some((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    return parts.some((part) => convexPenetration(part, [p, q]) > 0);
  });
}
