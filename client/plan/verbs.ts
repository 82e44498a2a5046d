import type { Session } from '#client/session/types.ts';
import { add, distance, dot, type Point, scale, sub } from '#model/geometry/vec.ts';
import type { SceneWall } from '#model/scene/types.ts';
import type { Piece } from '#model/schema/types.ts';
import { shapeOfRoom } from './bodies.ts';
import { reachAlong, type TurnedBox, tidyDegrees } from './box.ts';
import { nameOfItem } from './describe.ts';
import type { Item } from './items.ts';
import { distanceToward } from './nearDistances.ts';
import { withCorner, withWallMoved } from './roomShape.ts';
import { writeRoom } from './roomWrites.ts';
import { carried, seatsOf } from './seats.ts';
import { closest, facingFrom, keepInside, nearestOn } from './snap.ts';
import { tellItem } from './tellItem.ts';
import { isLocked, type Thing, thingOf } from './things.ts';

type Place = { x: number; y: number; rotation: number };

/** Puts a thing where it should be, its seats with it, as one step. False: locked, or gone. */
function putAt(session: Session, item: Item, to: Place): boolean {
  const thing = thingOf(session, item);
  if (!thing || isLocked(thing)) return false;
  if (item.kind === 'fixture') return session.commands.changeFixture(item.id, to);
  const arrangement = session.arrangement();
  const seats = seatsOf(arrangement.pieces, item.id);
  session.undo.beginStep();
  const isDone = session.commands.movePiece(arrangement.id, item.id, to);
  for (const seat of seats) session.commands.movePiece(arrangement.id, seat.id, carried(seat, thing, to));
  session.undo.endStep();
  return isDone;
}

/** Slides the chosen thing by mm; a door along its wall, a wall along its normal. */
export function slideBy(session: Session, item: Item, by: Point): boolean {
  const thing = thingOf(session, item);
  const { room } = session.classroom();
  const shape = shapeOfRoom(room);
  if (thing) {
    const kept = keepInside({ ...thing, x: thing.x + by.x, y: thing.y + by.y }, shape);
    const wall = stoppedBy(shape.walls, { ...thing, ...kept }, sub(add(thing, by), kept));
    if (wall && distance(kept, thing) < 1) {
      session.announce(isLocked(thing) ? sayLocked(session, item) : `${nameOfItem(session, item)} ${standsAgainst(session, wall)}.`);
      return false;
    }
    const isDone = putAt(session, item, { x: kept.x, y: kept.y, rotation: thing.rotation });
    if (isDone && wall) tellItem(session, item, `It ${standsAgainst(session, wall)}`);
    return isDone && wall ? true : told(session, item, isDone);
  }
  if (item.kind === 'opening') {
    const opening = shape.openings.find((o) => o.id === item.id);
    if (!opening) return false;
    const long = distance(opening.wall.a, opening.wall.b);
    const along = dot(by, scale(sub(opening.wall.b, opening.wall.a), 1 / Math.max(1, long)));
    const offset = Math.min(Math.max(0, long - opening.raw.width), Math.max(0, opening.raw.offset + along));
    return told(session, item, session.commands.changeOpening(item.id, { offset }));
  }
  if (item.kind === 'corner') {
    const corner = room.corners.find((c) => c.id === item.id);
    if (!corner) return false;
    writeRoom(session, room, withCorner(room, item.id, { x: corner.x + by.x, y: corner.y + by.y }));
    return told(session, item, true);
  }
  const wall = shape.walls.find((w) => w.corner === item.id);
  if (!wall) return false;
  writeRoom(session, room, withWallMoved(room, wall, dot(by, wall.inward)));
  return told(session, item, true);
}

/** The wall that held a thing back by `held` (mm); null: nothing did. */
function stoppedBy(walls: readonly SceneWall[], box: TurnedBox, held: Point): SceneWall | null {
  const size = Math.hypot(held.x, held.y);
  if (size < 1) return null;
  const against = walls.filter((wall) => {
    const gap = dot(sub(box, wall.a), wall.inward) - reachAlong(box, wall.inward);
    return dot(held, wall.inward) < -size / 2 && Math.abs(gap) < 2;
  });
  return closest(against, (wall) => distance(nearestOn(wall, box), box)) ?? null;
}

/** "stands against the north wall" */
function standsAgainst(session: Session, wall: SceneWall): string {
  return `stands against the ${nameOfItem(session, { kind: 'wall', id: wall.corner }).toLowerCase()}`;
}

/** Turns by degrees clockwise, still inside the room. */
export function turnBy(session: Session, item: Item, degrees: number): boolean {
  const thing = thingOf(session, item);
  return thing ? turnTo(session, item, thing.rotation + degrees) : false;
}

export function turnTo(session: Session, item: Item, degrees: number): boolean {
  const thing = thingOf(session, item);
  if (!thing) return false;
  const rotation = tidyDegrees(degrees);
  const { x, y } = keepInside({ ...thing, rotation }, shapeOfRoom(session.classroom().room));
  return told(session, item, putAt(session, item, { x, y, rotation }));
}

/** Its back to the nearest wall. */
export function toTheWall(session: Session, item: Item): boolean {
  const thing = thingOf(session, item);
  const shape = shapeOfRoom(session.classroom().room);
  const wall = closest(shape.walls, (w) => distance(nearestOn(w, thing ?? { x: 0, y: 0 }), thing ?? { x: 0, y: 0 }));
  if (!thing || !wall) return false;
  const rotation = facingFrom(wall);
  const turned: TurnedBox = { ...thing, rotation };
  const gap = dot(sub(thing, wall.a), wall.inward) - reachAlong(turned, wall.inward);
  const { x, y } = keepInside({ ...turned, x: thing.x - wall.inward.x * gap, y: thing.y - wall.inward.y * gap }, shape);
  return told(session, item, putAt(session, item, { x, y, rotation }));
}

/** mm from the thing to the wall straight to the west or north of it; null: no wall there. */
export function gapToWall(session: Session, thing: Thing, side: 'west' | 'north'): number | null {
  const direction = side === 'west' ? { x: -1, y: 0 } : { x: 0, y: -1 };
  return distanceToward(thing, direction, shapeOfRoom(session.classroom().room).walls)?.mm ?? null;
}

/** Puts the thing so far (mm) from the wall to the west or north of it. */
export function setGapToWall(session: Session, item: Item, side: 'west' | 'north', gap: number): boolean {
  const thing = thingOf(session, item);
  const now = thing && gapToWall(session, thing, side);
  if (!thing || typeof now !== 'number') return false;
  return slideBy(session, item, side === 'west' ? { x: gap - now, y: 0 } : { x: 0, y: gap - now });
}

/** Away with it: trays go on the table, seats of a table stay; a corner goes when three remain. */
export function putAway(session: Session, item: Item): boolean {
  const name = nameOfItem(session, item);
  const { commands } = session;
  const { room } = session.classroom();
  const trays = session.arrangement().placements.filter((p) => p.piece === item.id).length;
  let isDone = false;
  if (item.kind === 'piece') isDone = commands.putAwayPiece(session.arrangement().id, item.id);
  if (item.kind === 'fixture') isDone = commands.removeFixture(item.id);
  if (item.kind === 'opening') isDone = commands.removeOpening(item.id);
  if (item.kind === 'corner' && room.corners.length > 3) isDone = commands.setCorners(room.corners.filter((c) => c.id !== item.id));
  if (!isDone) {
    session.announce(item.kind === 'wall' ? 'A wall goes when one of its corners is put away.' : `${name} could not be put away.`);
    return false;
  }
  session.setView({ chosen: null });
  const onTable = trays === 0 ? '' : `; ${trays} ${trays === 1 ? 'tray is' : 'trays are'} on the table`;
  session.announce(`${name} is put away${onTable}. Take back brings it again while this page stays open.`);
  return true;
}

export function toggleLock(session: Session, piece: Piece): boolean {
  const isDone = session.commands.changePiece(session.arrangement().id, piece.id, { locked: !piece.locked });
  if (isDone) session.announce(piece.locked ? 'It can be moved again.' : 'It stays where it stands until it is unlocked.');
  return isDone;
}

/** Chooses a thing, shows a shelf's front with it, and says what it is. */
export function choose(session: Session, item: Item | null): void {
  if (!item) {
    session.setView({ chosen: null });
    return;
  }
  const piece = item.kind === 'piece' ? session.arrangement().pieces.find((p) => p.id === item.id) : undefined;
  const side = piece?.kind === 'shelf' ? piece.sides[0] : undefined;
  const isShown = side && session.view().frontOf?.piece === item.id;
  session.setView({ chosen: item, ...(side && !isShown && { frontOf: { piece: item.id, side } }) });
  tellItem(session, item);
}

function told(session: Session, item: Item, isDone: boolean): boolean {
  const thing = thingOf(session, item);
  if (isDone) tellItem(session, item);
  else if (thing && isLocked(thing)) session.announce(sayLocked(session, item));
  return isDone;
}

const sayLocked = (session: Session, item: Item): string => `${nameOfItem(session, item)} is locked. Unlock it to move it.`;
