import { convexParts } from '../geometry/convexParts.ts';
import { area, type Box, boundingBox, contains, type Polygon } from '../geometry/polygon.ts';
import {
  inside,
  joined,
  minus,
  type Patch,
  patchesOf,
  pointInside,
  type Region,
  regionArea,
  shared,
  united,
  within,
  without,
} from '../geometry/region.ts';
import { add, type Point, scale } from '../geometry/vec.ts';
import { shadowOf, shadowReach, visibleFloor } from '../geometry/visibility.ts';
import { distanceToSegment } from '../geometry/withinRing.ts';
import type { Scene, SceneBody } from '../scene/types.ts';
import { roundM2, roundMm } from '../units/round.ts';

/** mm: eye of an adult who sits on a low chair; class rule */
const SEATED_EYE = 1100;
/** mm: an eye this near to a wall is taken a little into the room */
const AT_WALL = 1;
/** mm²: walls that hide no more than this hide nothing. */
const ALL_SEEN = 1;

/** Where an adult watches from. */
interface Eye extends Point {
  readonly id: string;
  /** mm above the floor */
  readonly height: number;
}

/** A patch of floor on which a child's head is out of every adult's sight. */
export interface HiddenPatch extends Patch {
  readonly at: Point;
  /** What hides it from most of the watching places; null: the walls alone. */
  readonly behind: SceneBody | null;
}

/** Floor that no adult sees: from every watching place a child's head there is behind a wall or a thing. */
export interface Sight {
  /** Those inside the room. */
  readonly eyes: readonly Eye[];
  /** m² inside the walls and clear of furniture */
  readonly floorArea: number;
  /** m², things of unknown height taken as hiding nothing */
  readonly hiddenArea: number;
  /** The largest first; for the drawing too. */
  readonly hidden: readonly HiddenPatch[];
  /** Further patches that may be hidden, things of unknown height taken as endless. */
  readonly doubtful: readonly Patch[];
  /** Whose height decides that, in file order. */
  readonly unknown: readonly SceneBody[];
}

interface Shadow {
  readonly body: SceneBody;
  readonly ring: Polygon;
  readonly box: Box;
}

/** What one eye sees of the room and what stands in its way. */
interface View {
  readonly withinWalls: Polygon;
  readonly shadows: readonly Shadow[];
  readonly unknown: readonly Shadow[];
}

/** Every adult's chair at 1100 where the class names no watching places. Those outside the walls are left out. */
function eyesOf({ arrangement, bodies, room }: Scene): Eye[] {
  const named = arrangement.watch?.map(({ id, x, y, eye }): Eye => ({ id, x, y, height: eye }));
  const chairs = bodies.filter((body) => body.kind === 'adult-seat');
  const eyes = named ?? chairs.map(({ id, center }): Eye => ({ id, ...center, height: SEATED_EYE }));
  return eyes
    .map((eye) => {
      const wall = room.walls.find((one) => distanceToSegment(one, eye) < AT_WALL);
      return wall ? { ...eye, ...add(eye, scale(wall.inward, AT_WALL)) } : eye;
    })
    .filter((eye) => contains(room.outline, eye));
}

/** Exact: corners to 1e-3 mm (a round thing as its 48-gon). Null where the walls do not hold. */
export function measureSight(scene: Scene): Sight | null {
  const { room, bodies } = scene;
  if (!room.isSound) return null;
  const eyes = eyesOf(scene);
  const things = bodies.filter((body) => body.isObstacle).map((body) => body.footprint);
  const floor = without([room.outline], things);
  const opaque = bodies.filter(hides).map((body) => ({ body, parts: convexParts(body.footprint) }));
  const views = eyes.map((eye) => viewFrom(scene, eye, opaque));
  const hidden = views.length === 0 ? floor : within(hiddenFromAll(views, room.outline), room.outline, things);
  const common = { eyes, floorArea: regionArea(floor) / 1e6, hiddenArea: regionArea(hidden) / 1e6, hidden: patches(hidden, views) };
  return { ...common, ...doubts(hidden, floor, views) };
}

/** Rugs and steps lie flat; a seat that belongs to a table stands under it. */
const hides = (body: SceneBody): boolean => !body.isSeeThrough && body.isObstacle;

function viewFrom({ room, classroom }: Scene, eye: Eye, opaque: readonly { body: SceneBody; parts: readonly Polygon[] }[]): View {
  const box = boundingBox(room.outline);
  const withinWalls = visibleFloor(room.outline, eye);
  const shadows: Shadow[] = [];
  const unknown: Shadow[] = [];
  for (const { body, parts } of opaque) {
    if (contains(body.footprint, eye)) continue; // nobody hides behind what the adult sits on
    const reach = shadowReach(eye.height, classroom.children.head, body.height ?? Infinity);
    if (!reach) continue;
    for (const part of parts) {
      const ring = shadowOf(part, eye, reach, box);
      if (ring) (body.height === null ? unknown : shadows).push({ body, ring, box: boundingBox(ring) });
    }
  }
  return { withinWalls, shadows, unknown };
}

/** What no eye sees, furniture and some of what lies outside with it: shadows are small, and all the floor is not. */
function hiddenFromAll([first, ...others]: readonly View[], outline: Polygon): Region {
  const rings = ({ shadows }: View): Polygon[] => shadows.map(({ ring }) => ring);
  const isWalled = ({ withinWalls }: View): boolean => area(outline) - area(withinWalls) >= ALL_SEEN;
  const behind = (view: View, region: Region, hidden: Region): Region =>
    isWalled(view) ? joined(hidden, minus(region, [view.withinWalls])) : hidden;
  if (!first) return [outline];
  // What one eye leaves hidden is all that the next has to be asked about.
  return others.reduce((left, view) => behind(view, left, inside(left, rings(view))), behind(first, [outline], united(rings(first))));
}

const patches = (hidden: Region, views: readonly View[]): HiddenPatch[] =>
  patchesOf(hidden).map((patch) => {
    const at = pointInside(patch);
    return { ...patch, at, behind: whatHides(at, views) };
  });

function whatHides(p: Point, views: readonly View[]): SceneBody | null {
  const times = new Map<SceneBody, number>();
  for (const { shadows } of views) {
    const bodies = new Set<SceneBody>();
    for (const { body, ring, box } of shadows) {
      if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) continue;
      if (contains(ring, p)) bodies.add(body);
    }
    for (const body of bodies) times.set(body, (times.get(body) ?? 0) + 1);
  }
  let best: SceneBody | null = null;
  for (const [body, count] of times) if (!best || count > (times.get(best) ?? 0)) best = body;
  return best;
}

function doubts(hidden: Region, floor: Region, views: readonly View[]): Pick<Sight, 'doubtful' | 'unknown'> {
  if (views.every((view) => view.unknown.length === 0)) return { doubtful: [], unknown: [] };
  const surely = views.flatMap((view) =>
    without(
      [view.withinWalls],
      [...view.shadows, ...view.unknown].map((shadow) => shadow.ring),
    ),
  );
  const doubtful = minus(minus(floor, surely), hidden);
  const inDoubt = views.flatMap((view) => view.unknown).filter(({ ring }) => regionArea(shared(doubtful, [ring])) > 1);
  return { doubtful: patchesOf(doubtful), unknown: [...new Set(inDoubt.map(({ body }) => body))] };
}

/** As the report lists it; `hidden` is for the drawing. Null: the walls do not hold, or nobody watches. */
export function reportSight(sight: Sight | null) {
  if (!sight || sight.eyes.length === 0) return null;
  const ring = (polygon: Polygon) => polygon.map(({ x, y }) => [roundMm(x), roundMm(y)] as const);
  return {
    floorArea: roundM2(sight.floorArea),
    hiddenArea: roundM2(sight.hiddenArea),
    hidden: sight.hidden.map(({ outline, holes }) => ({ outline: ring(outline), holes: holes.map(ring) })),
  };
}
