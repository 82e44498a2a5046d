import { convexParts } from '../../geometry/convexParts.ts';
import { overlapsBy } from '../../geometry/penetration.ts';
import { type Box, boundingBox, boxesMeet, clockwise, type Polygon } from '../../geometry/polygon.ts';
import { add, distance, type Point, scale, turn } from '../../geometry/vec.ts';
import { reachesOutside } from '../../geometry/withinRing.ts';
import { exitsOf } from '../../measures/exits.ts';
import { pieceBody } from '../../scene/bodies.ts';
import type { Scene, SceneBody } from '../../scene/types.ts';
import { EXIT_FLOOR, TOUCHING } from './practice.ts';
import { clashes, type MoveUnit } from './units.ts';

/** mm between the places that are tried for a thing set aside */
const GRID = 100;
/** Places tried at most; in a larger room they lie further apart. */
const MOST_PLACES = 20_000;

/** The room itself: what stays where it is, and floor on which nothing may be set down for a while. */
export class MoveFloor {
  readonly room: Scene['room'];
  /** Pieces that stay, and what is built in and stands in the way. */
  readonly staying: readonly SceneBody[];
  /** Floor before exits, and what leaves of doors sweep. */
  readonly keptClear: readonly Polygon[];

  constructor(from: Scene, units: readonly MoveUnit[]) {
    this.room = from.room;
    const moving = new Set(units.flatMap((unit) => unit.from.map(({ id }) => id)));
    this.staying = from.bodies.filter((body) => (body.piece ? !moving.has(body.id) && body.kind !== 'rug' : !body.fixture?.walkable));
    this.keptClear = [
      ...exitsOf(from).map((exit) => {
        const out = scale(exit.wall.inward, EXIT_FLOOR);
        return clockwise([exit.a, exit.b, add(exit.b, out), add(exit.a, out)]);
      }),
      ...from.room.openings.flatMap(({ swingFloor }) => (swingFloor ? convexParts(swingFloor) : [])),
    ];
  }

  isInside(bodies: readonly SceneBody[]): boolean {
    return !this.room.isSound || bodies.every((body) => !reachesOutside(this.room.outline, partsOf(body), TOUCHING));
  }

  /** Stands before an exit, or where a door's leaf swings. */
  isBeforeDoor(bodies: readonly SceneBody[]): boolean {
    return bodies.some((body) => {
      const box = boundingBox(body.footprint);
      return this.keptClear.some((floor) => boxesMeet(box, boundingBox(floor)) && overlapsBy(partsOf(body), [floor], TOUCHING));
    });
  }

  /** The nearest free floor for a unit among all that stands meanwhile; null: none. Tried as it stands and a quarter turn on, every 100 mm. */
  placeAside(unit: MoveUnit, meanwhile: readonly SceneBody[]): readonly SceneBody[] | null {
    const [lead] = unit.from;
    if (!lead || !this.room.isSound) return null;
    const others = [...this.staying, ...meanwhile];
    const found = placesOf(boundingBox(this.room.outline), lead.center);
    for (const place of found)
      for (const turned of [0, 90]) {
        const bodies = setDown(unit.from, lead, place, turned);
        if (this.isInside(bodies) && !this.isBeforeDoor(bodies) && !bodies.some((body) => others.some((other) => clashes(body, other))))
          return bodies;
      }
    return null;
  }
}

const partsOf = ({ isConvex, footprint }: SceneBody): readonly Polygon[] => (isConvex ? [footprint] : convexParts(footprint));

function placesOf({ minX, minY, maxX, maxY }: Box, from: Point): Point[] {
  const places: Point[] = [];
  const step = Math.max(GRID, Math.sqrt(((maxX - minX) * (maxY - minY)) / MOST_PLACES));
  for (let x = minX + step; x < maxX; x += step) for (let y = minY + step; y < maxY; y += step) places.push({ x, y });
  return places.sort((p, q) => distance(p, from) - distance(q, from));
}

/** All of a unit as one, its first piece at a place, turned by degrees about it. */
function setDown(bodies: readonly SceneBody[], lead: SceneBody, place: Point, turned: number): SceneBody[] {
  return bodies.flatMap(({ piece, center }) => {
    if (!piece) return [];
    const beside = turn({ x: center.x - lead.center.x, y: center.y - lead.center.y }, turned);
    return [pieceBody({ ...piece, x: place.x + beside.x, y: place.y + beside.y, rotation: (piece.rotation + turned) % 360 })];
  });
}
