import { eachBoxPair } from '../geometry/boxPairs.ts';
import { convexParts } from '../geometry/convexParts.ts';
import { penetration } from '../geometry/penetration.ts';
import { type Box, boundingBox, type Polygon } from '../geometry/polygon.ts';
import { keptWith } from '../scene/kept.ts';
import type { Scene, SceneBody } from '../scene/types.ts';

/** Two things that stand in the same place. */
export interface Overlap {
  /** earlier in the scene's order */
  readonly a: SceneBody;
  readonly b: SceneBody;
  /** mm, the shortest way they have to move apart to touch */
  readonly depth: number;
}

/** mm: rounding of the geometry, no overlap at all */
const NOISE = 1e-6;

/**
 * Every two things that overlap, in the scene's order, with the depth in mm. Rugs and floor that is walked on lie under
 * things; a seat goes under the table it names; two fixtures are the room as it was built (a sink in a counter).
 */
export function measureOverlaps(scene: Scene): Overlap[] {
  const bodies = scene.bodies.filter(isStanding);
  const found: { i: number; j: number; depth: number }[] = [];
  eachBoxPair(bodies.map(boxOf), (i, j) => {
    const a = bodies[i] as SceneBody;
    const b = bodies[j] as SceneBody;
    if (!canClash(a, b)) return;
    const depth = penetration(partsOf(a), partsOf(b));
    if (depth > NOISE) found.push({ i, j, depth });
  });
  found.sort((p, q) => p.i - q.i || p.j - q.j);
  return found.map(({ i, j, depth }) => ({ a: bodies[i] as SceneBody, b: bodies[j] as SceneBody, depth }));
}

/** Takes its place on the floor: not a rug, not a step or the like that is walked on. */
export const isStanding = (body: SceneBody): boolean => body.kind !== 'rug' && !body.fixture?.walkable;

/** Whether standing in the same place is a mistake for these two. */
export function canClash(a: SceneBody, b: SceneBody): boolean {
  if (a === b || !isStanding(a) || !isStanding(b)) return false;
  if (a.source === 'fixture' && b.source === 'fixture') return false;
  return a.piece?.table !== b.id && b.piece?.table !== a.id;
}

/** The convex parts of bodies, each cut up once. */
export const cachedParts = (): ((body: SceneBody) => readonly Polygon[]) => partsOf;

const partsOf = keptWith((body: SceneBody): readonly Polygon[] => (body.isConvex ? [body.footprint] : convexParts(body.footprint)));

/** The box round a body's footprint, mm. */
export const boxOf = keptWith((body: SceneBody): Box => boundingBox(body.footprint));
