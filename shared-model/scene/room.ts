import { area, clockwise, isSimple, type Polygon, signedArea } from '../geometry/polygon.ts';
import { add, distance, inwardNormal, lerp, type Point, scale, sub, unit } from '../geometry/vec.ts';
import type { Opening, Room } from '../schema/types.ts';
import { isTypedId } from './bodies.ts';
import type { SceneOpening, SceneRoom, SceneWall } from './types.ts';

/** Steps of the fan a leaf sweeps: 5 degrees keep it within 0.1 % of the circle. */
const FAN_STEPS = 18;

export function buildRoom(room: Room): SceneRoom {
  const ring = room.corners.map(({ x, y }): Point => ({ x, y }));
  const runsClockwise = signedArea(ring) >= 0;
  const walls = room.corners.map((corner, i): SceneWall => {
    const a = ring[i] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    return { id: `wall:${corner.id}`, corner: corner.id, a, b, inward: scale(inwardNormal(a, b), runsClockwise ? 1 : -1) };
  });
  const mainId = mainWayIn(room.openings);
  const openings = room.openings.flatMap((opening) => {
    const wall = walls.find((w) => w.corner === opening.from);
    return wall ? [buildOpening(opening, wall, runsClockwise, opening.id === mainId, openingLabel(opening, room.openings, walls))] : [];
  });
  const isSound = isSimple(ring) && area(ring) > 1;
  return { outline: clockwise(ring), walls, openings, isSound, area: area(ring) / 1e6 };
}

const sides = ['east', 'south-east', 'south', 'south-west', 'west', 'north-west', 'north', 'north-east'];
/** The side of the sheet a wall stands on, its top north: the one that its inside looks away from. */
function sideOf({ inward }: SceneWall): string {
  const eighth = Math.round(Math.atan2(-inward.y, -inward.x) / (Math.PI / 4));
  return sides[(eighth + 8) % 8] ?? 'north';
}

/** Where it leads, its kind and typed id, or the wall it is in; several on one side are counted along the walk round the walls. */
function openingLabel(opening: Opening, all: readonly Opening[], walls: readonly SceneWall[]): string {
  const { kind, name, id } = opening;
  if (name?.trim()) return name;
  if (isTypedId(id)) return `${kind} ${id}`;
  const order = (from: string): number => walls.findIndex(({ corner }) => corner === from);
  const sideAt = (from: string): string | null => {
    const wall = walls[order(from)];
    return wall ? sideOf(wall) : null;
  };
  const side = sideAt(opening.from);
  const alike = all
    .filter((other) => other.kind === kind && !other.name?.trim() && sideAt(other.from) === side)
    .sort((p, q) => order(p.from) - order(q.from) || p.offset - q.offset);
  return alike.length > 1 ? `${kind} ${alike.indexOf(opening) + 1} in the ${side} wall` : `the ${kind} in the ${side} wall`;
}

/** The opening said to be main, else the first door, else the first passage. */
function mainWayIn(openings: readonly Opening[]): string | undefined {
  const byKind = (kind: Opening['kind']) => openings.find((o) => o.kind === kind);
  return (openings.find((o) => o.main === true && o.kind !== 'window') ?? byKind('door') ?? byKind('passage'))?.id;
}

function buildOpening(raw: Opening, wall: SceneWall, runsClockwise: boolean, isMain: boolean, label: string): SceneOpening {
  const along = unit(sub(wall.b, wall.a));
  const a = add(wall.a, scale(along, raw.offset));
  const b = add(wall.a, scale(along, raw.offset + raw.width));
  const clear = raw.clear ?? (raw.kind === 'passage' ? raw.width : null);
  // Facing a wall from inside, a room that runs clockwise has the wall's start on the left.
  const hingeAtA = raw.swing.endsWith('left') === runsClockwise;
  const hinged = raw.swing.startsWith('in-') || raw.swing.startsWith('out-');
  const span = Math.min(clear ?? raw.width, raw.width);
  const from = !hinged ? (raw.width - span) / 2 : hingeAtA ? raw.width - span : 0;
  return {
    id: raw.id,
    label,
    raw,
    wall,
    a,
    b,
    clear,
    clearA: add(a, scale(along, from)),
    clearB: add(a, scale(along, from + span)),
    swingFloor: raw.kind === 'door' && raw.swing.startsWith('in-') ? fan(hingeAtA ? a : b, hingeAtA ? b : a, wall.inward) : null,
    isWayIn: raw.kind !== 'window',
    isMain,
  };
}

/** The quarter circle that a leaf hinged at `hinge` sweeps into the room. */
function fan(hinge: Point, latch: Point, inward: Point): Polygon {
  const radius = distance(hinge, latch);
  const along = unit(sub(latch, hinge));
  const rim: Point[] = [];
  for (let i = 0; i <= FAN_STEPS; i++) {
    const t = (i / FAN_STEPS) * (Math.PI / 2);
    rim.push(add(hinge, add(scale(along, radius * Math.cos(t)), scale(inward, radius * Math.sin(t)))));
  }
  return clockwise([hinge, ...rim]);
}

/** The point a given share along an opening, on the wall's inner face. */
export const alongOpening = (opening: SceneOpening, share: number): Point => lerp(opening.a, opening.b, share);
