import type { Session } from '#client/session/types.ts';
import type { Edit } from '#model/findings/edit.ts';
import { type Point, sub } from '#model/geometry/vec.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { sayList } from '../../text/sayList.ts';
import { shapeOfRoom } from '../bodies.ts';
import { lower, nameOfItem } from '../describe.ts';
import { type Item, isSame } from '../items.ts';
import { carried } from '../seats.ts';
import { isLocked, thingOf } from '../things.ts';
import { boxRound, evenly, inARow, keptTogether, mirrored, type SetBox, shifted, turnedAbout } from './arrange.ts';
import { areLocked, chooseSeveral, moversOf, sayLockedOnes, saySet } from './chosenSet.ts';
import { copyThings } from './copies.ts';
import { mirrorEdits, mirroredFixture, mirroredWalk } from './mirrorEdits.ts';
import { sayShared } from './sayShared.ts';
import { type Place, type Places, writeAll } from './writeAll.ts';

const boxOf = (thing: Piece | Fixture): SetBox => thing;
const placesOf = (boxes: readonly SetBox[]): Map<string, Place> => new Map(boxes.map((box) => [box.id, box]));

function asOneStep(session: Session, change: () => void): void {
  session.undo.beginStep();
  change();
  session.undo.endStep();
}

/** Writes where things now stand as one step. */
const writePlaces = (session: Session, places: Places): void => asOneStep(session, () => writeAll(session, places, [], () => ({})));

const sayNothingMoves = (session: Session, locked: readonly Item[]): false => {
  session.announce(locked.length > 0 ? 'All of them are locked. Unlock them to move them.' : 'Nothing of it can be moved.');
  return false;
};

/** Seats of the tables, as they go with where their tables now stand. */
function withSeats(boxes: readonly SetBox[], { seats }: ReturnType<typeof moversOf>): Map<string, Place> {
  const places = placesOf(boxes);
  for (const { seat, table } of seats) {
    const to = places.get(table.id);
    if (to) places.set(seat.id, carried(seat, table, to));
  }
  return places;
}

interface Rigid {
  readonly change: (boxes: readonly SetBox[], round: { x: number; y: number }) => SetBox[];
  readonly said: (moved: Point) => string;
  readonly stops: string;
  /** It changes something even where nothing moves. */
  readonly isMore?: boolean;
}

/** Moves what can be moved without changing it in itself, chairs with their tables, shifted back into the room together. */
function moveRigid(
  session: Session,
  items: readonly Item[],
  { change, said, stops, isMore = false }: Rigid,
  finish?: (places: Places) => void,
): boolean {
  const movers = moversOf(session, items);
  const all = [...movers.things, ...movers.seats.map(({ seat }) => seat)].map(boxOf);
  const [first] = movers.things;
  if (!first) return sayNothingMoves(session, movers.locked);
  const before = new Map(all.map((box) => [box.id, box]));
  const after = keptTogether(change(all, boxRound(movers.things, 0)), shapeOfRoom(session.classroom().room), before);
  const lead = after?.find(({ id }) => id === first.id);
  const isMoved = after?.some((box) => {
    const was = before.get(box.id) ?? box;
    return Math.hypot(box.x - was.x, box.y - was.y) >= 1 || Math.abs(box.rotation - was.rotation) > 0.01;
  });
  if (!after || !lead || !(isMoved || isMore)) {
    session.announce(`${stops}${sayLockedOnes(session, movers.locked)}`);
    return false;
  }
  const places = placesOf(after);
  if (finish) finish(places);
  else writePlaces(session, places);
  session.announce(`${said(sub(lead, first))}${sayLockedOnes(session, movers.locked)}`);
  return true;
}

const count = (items: readonly Item[], session: Session): string => {
  const moving = moversOf(session, items).things.length;
  return moving === 1 ? 'One thing' : `${moving} things`;
};

/** All by the same way, as far as the walls let the first of them go. mm */
export function slideSet(session: Session, items: readonly Item[], by: Point): boolean {
  const { units } = session.classroom().display;
  return moveRigid(session, items, {
    change: (boxes) => shifted(boxes, by),
    said: (moved) => `${count(items, session)} slid ${sayLength(Math.round(Math.hypot(moved.x, moved.y)), units)}.`,
    stops: 'They stand against the wall.',
  });
}

/** About the middle of them all, degrees clockwise. */
export function turnSet(session: Session, items: readonly Item[], degrees: number): boolean {
  return moveRigid(session, items, {
    change: (boxes, middle) => turnedAbout(boxes, middle, degrees),
    said: () => `${count(items, session)} turned by ${Math.abs(degrees)}° ${degrees < 0 ? 'to the left' : 'to the right'}.`,
    stops: 'Turned so, they do not fit between the walls. Nothing was moved.',
  });
}

/** Left and right changed about the middle of them all. Fronts stay fronts; what is at the left of a thing comes to its right. */
export function mirrorSet(session: Session, items: readonly Item[]): boolean {
  const arrangement = session.arrangement();
  return moveRigid(
    session,
    items,
    {
      change: (boxes, { x }) => mirrored(boxes, x),
      said: () => `${count(items, session)} mirrored, left for right. Fronts are still fronts; trays keep their order.`,
      stops: 'Mirrored, nothing would stand otherwise.',
      isMore: items.some(({ id }) => arrangement.pieces.some((piece) => piece.id === id && mirrorEdits(arrangement, piece).length > 0)),
    },
    (places) => {
      const pieces = arrangement.pieces.filter(({ id }) => places.has(id));
      const walk = mirroredWalk(arrangement, pieces);
      const edits = pieces.flatMap((piece) => mirrorEdits(arrangement, piece));
      const fixtures = new Map(session.classroom().room.fixtures.map((fixture) => [fixture.id, fixture]));
      asOneStep(session, () => {
        writeAll(session, places, edits, (id) => {
          const fixture = fixtures.get(id);
          return fixture ? mirroredFixture(fixture) : {};
        });
        if (walk) session.commands.setWalk(arrangement.id, walk);
      });
    },
  );
}

/** Degrees from one direction to another, as far as anybody sees it. */
const isTurned = (degrees: number): boolean => Math.abs((((degrees % 360) + 540) % 360) - 180) >= 0.5;

/** Side by side along the line of the first, touching or with a gap (mm). */
export function rowSet(session: Session, items: readonly Item[], gap = 0): boolean {
  const movers = moversOf(session, items);
  const first = items[0] && thingOf(session, items[0]);
  const others = movers.things.filter((thing) => thing !== first);
  if (!first || !items[0] || others.length === 0) return sayNothingMoves(session, movers.locked);
  const row = inARow([first, ...others].map(boxOf), gap);
  const shape = shapeOfRoom(session.classroom().room);
  const isFirstLocked = isLocked(first);
  const kept = keptTogether(row, shape, new Map());
  const moved = kept?.[0] ? sub(kept[0], first) : null;
  const { units } = session.classroom().display;
  const long = sayLength(
    row.reduce((sum, { width }) => sum + width, gap * others.length),
    units,
  );
  if (!kept || !moved || (isFirstLocked && Math.hypot(moved.x, moved.y) >= 1)) {
    const room = isFirstLocked ? 'beside the first, which is locked' : 'between the walls';
    session.announce(`The row would be ${long} long and does not fit ${room}. Nothing was moved.`);
    return false;
  }
  const places = withSeats(
    kept.filter(({ id }) => !isFirstLocked || id !== first.id),
    movers,
  );
  writePlaces(session, places);
  const name = lower(nameOfItem(session, items[0]));
  const also =
    Math.hypot(moved.x, moved.y) >= 1 ? ` The whole row went ${sayLength(Math.round(Math.hypot(moved.x, moved.y)), units)} to fit.` : '';
  const lockedOthers = movers.locked.filter((item) => items[0] && !isSame(item, items[0]));
  const apart = gap > 0 ? `, ${sayLength(gap, units)} between each and the next` : '';
  const turned = others.filter(({ id, rotation }) => places.has(id) && isTurned(rotation - first.rotation));
  const asIt = turned.map((thing) =>
    lower(nameOfItem(session, items.find(({ id }) => id === thing.id) ?? { kind: 'piece', id: thing.id })),
  );
  const how = asIt.length === 0 ? '' : ` Turned to lie as ${name} does: ${sayList(asIt)}.`;
  session.announce(
    `${others.length + 1} things in a row with ${name}${apart}, ${long} long.${how}${also}${sayShared(session, new Set(places.keys()))}${sayLockedOnes(session, lockedOthers)}`,
  );
  return true;
}

/** The same gap between each and the next; the two outermost stay. */
export function spaceSet(session: Session, items: readonly Item[]): boolean {
  const movers = moversOf(session, items);
  const lockedIds = new Set(movers.locked.map(({ id }) => id));
  const all = items
    .flatMap((item) => thingOf(session, item) ?? [])
    .filter((thing) => lockedIds.has(thing.id) || movers.things.includes(thing));
  const { units } = session.classroom().display;
  const spaced = evenlyRound(all.map(boxOf), lockedIds);
  if (!spaced) {
    session.announce('Evenly takes three things or more: the two outermost stay, those between are spaced.');
    return false;
  }
  if (!spaced.isDone) {
    session.announce(`Between the two outermost they are ${sayLength(Math.round(spaced.short), units)} too long. Draw those apart first.`);
    return false;
  }
  writePlaces(
    session,
    withSeats(
      spaced.boxes.filter(({ id }) => !lockedIds.has(id)),
      movers,
    ),
  );
  const locked = movers.locked.filter(({ id }) => !spaced.boxes.some((box) => box.id === id));
  session.announce(
    `${spaced.boxes.length} things with ${sayLength(Math.round(spaced.gap), units)} between each and the next.${sayLockedOnes(session, locked)}`,
  );
  return true;
}

/** Locked things hold the ends; one between them that would have to move is left out. */
function evenlyRound(all: readonly SetBox[], locked: ReadonlySet<string>) {
  for (let boxes = all; boxes.length >= 3; ) {
    const spaced = evenly(boxes);
    if (!spaced.isDone) return spaced;
    const stays = new Set(
      spaced.boxes
        .filter((box, i) => {
          const was = boxes[i] ?? box;
          return locked.has(box.id) && Math.hypot(box.x - was.x, box.y - was.y) > 0.5;
        })
        .map(({ id }) => id),
    );
    if (stays.size === 0) return spaced;
    boxes = boxes.filter(({ id }) => !stays.has(id));
  }
  return null;
}

/** Locks all pieces, or, where all are locked, unlocks them. */
export function lockSet(session: Session, items: readonly Item[]): boolean {
  const arrangement = session.arrangement();
  const ids = new Set(items.map(({ id }) => id));
  const pieces = arrangement.pieces.filter(({ id }) => ids.has(id));
  if (pieces.length === 0) {
    session.announce('What belongs to the room cannot be locked.');
    return false;
  }
  const locked = !areLocked(session, items);
  const isDone = session.commands.applyEdits(
    arrangement.id,
    pieces.map((piece): Edit => ({ do: 'change-piece', piece: piece.id, set: { locked } })),
  );
  const fixtures = items.length - pieces.length;
  const rest = locked && fixtures > 0 ? ' What belongs to the room cannot be locked.' : '';
  const many = pieces.length === 1 ? 'One thing' : `${pieces.length} things`;
  session.announce(locked ? `${many} locked: nobody moves them by mistake until they are unlocked.${rest}` : `${many} can be moved again.`);
  return isDone;
}

/** Away with them: trays go on the table, chairs with their tables; locked things stay. */
export function putAwaySet(session: Session, items: readonly Item[]): boolean {
  const { things, seats, locked } = moversOf(session, items);
  if (things.length === 0) return sayNothingMoves(session, locked);
  const arrangement = session.arrangement();
  const isPiece = new Set(arrangement.pieces.map(({ id }) => id));
  const gone = new Set([...things, ...seats.map(({ seat }) => seat)].map(({ id }) => id));
  const trays = arrangement.placements.filter(({ piece }) => piece !== null && gone.has(piece)).length;
  session.undo.beginStep();
  for (const id of gone) {
    if (isPiece.has(id)) session.commands.putAwayPiece(arrangement.id, id);
    else session.commands.removeFixture(id);
  }
  session.undo.endStep();
  const [next, ...rest] = locked;
  session.setView({ chosen: next ?? null, alsoChosen: rest.map(({ id }) => id) });
  const chairs = seats.length === 0 ? '' : ` and ${seats.length} ${seats.length === 1 ? 'chair' : 'chairs'}`;
  const onTable = trays === 0 ? '' : `; ${trays} ${trays === 1 ? 'tray is' : 'trays are'} on the table`;
  const many = things.length === 1 ? 'One thing' : `${things.length} things`;
  session.announce(
    `${many}${chairs} put away${onTable}. Take back brings all again while this page stays open.${sayLockedOnes(session, locked)}`,
  );
  return true;
}

/** The same again beside them; the copies are chosen. */
export function copySet(session: Session, items: readonly Item[]): boolean {
  const made = copyThings(session, items);
  if (made.length === 0) return false;
  chooseSeveral(session, made);
  session.announce(`The same again: ${saySet(session, made)}. Empty; slide ${made.length === 1 ? 'it to its' : 'them to their'} place.`);
  return true;
}
