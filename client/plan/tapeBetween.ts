import type { Session } from '#client/session/types.ts';
import { type Closest, closestOfParts } from '#model/geometry/closest.ts';
import { makePart } from '#model/geometry/parts.ts';
import { contains, edges } from '#model/geometry/polygon.ts';
import { distance, lerp, type Point, type Segment } from '#model/geometry/vec.ts';
import type { WayBetweenAnswer, WayStop } from '#model/measures/wayBetween.ts';
import { sayLength } from '#model/units/sayLength.ts';
import type { AskWay } from './askWay.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from './bodies.ts';
import { lower, nameOfItem } from './describe.ts';
import type { Item } from './items.ts';
import { cellAt, neatlineBounds } from './neatline.ts';
import type { TapeThing, TapeWay } from './planStore.ts';
import { closest, nearestOn } from './snap.ts';
import { bodyOfItem, thingOf } from './things.ts';

/** mm: a point so near to a thing lies on it */
const ON = 2;

/** What a point (mm) lies on: a piece or fixture, a door or window, a wall; null: the floor, or a rug on it. */
export function tapeThingAt(session: Session, p: Point): TapeThing | null {
  const { room } = session.classroom();
  const bodies = [...session.arrangement().pieces.map(bodyOfPiece), ...room.fixtures.map(bodyOfFixture)];
  const hit = closest(
    bodies.filter((body) => body.kind !== 'rug' && isOn(body.footprint, p)),
    (body) => body.width * body.depth,
  );
  if (hit) return { kind: hit.source, id: hit.id };
  const { openings, walls } = shapeOfRoom(room);
  const opening = openings.find((o) => distance(nearestOn(o, p), p) <= ON);
  if (opening) return { kind: 'opening', id: opening.id };
  const wall = walls.find((w) => distance(nearestOn(w, p), p) <= ON);
  return wall ? { kind: 'wall', id: wall.corner } : null;
}

const isOn = (ring: readonly Point[], p: Point): boolean =>
  contains(ring, p) || edges(ring).some((edge) => distance(nearestOn(edge, p), p) <= ON);

/** The outline of a thing, or the line of a door or wall; null: it is gone. */
export function outlineOf(session: Session, item: Item): { ring: readonly Point[]; sides: readonly Segment[] } | null {
  const ring = bodyOfItem(session, item)?.footprint;
  if (ring) return { ring, sides: edges(ring) };
  const line = lineOfItem(session, item);
  return line ? { ring: [], sides: [line] } : null;
}

/** The line of a door, window or wall; null: the item is something else, or gone. */
export function lineOfItem(session: Session, item: Item): Segment | null {
  const { openings, walls } = shapeOfRoom(session.classroom().room);
  const line = item.kind === 'opening' ? openings.find((o) => o.id === item.id) : walls.find((w) => w.corner === item.id);
  return line ? { a: line.a, b: line.b } : null;
}

/** The shortest line from edge to edge of two things, mm; null: one of them is gone, or it is the same. */
export function edgeToEdge(session: Session, p: Item, q: Item): { from: Point; to: Point; mm: number } | null {
  if (p.id === q.id && p.kind === q.kind) return null;
  const one = outlineOf(session, p);
  const other = outlineOf(session, q);
  if (!one || !other) return null;
  const out: Closest = { distance: 0, ax: 0, ay: 0, bx: 0, by: 0 };
  let best: { from: Point; to: Point; mm: number } | null = null;
  for (const s of one.sides) {
    for (const t of other.sides) {
      closestOfParts(makePart('', [s.a, s.b]), makePart('', [t.a, t.b]), out);
      if (best && out.distance >= best.mm) continue;
      best = { from: { x: out.ax, y: out.ay }, to: { x: out.bx, y: out.by }, mm: out.distance };
    }
  }
  const inner = (ring: readonly Point[], sides: readonly Segment[]): Point | undefined =>
    ring.length > 0 && sides[0] && contains(ring, sides[0].a) ? sides[0].a : undefined;
  const shared = inner(one.ring, other.sides) ?? inner(other.ring, one.sides);
  return shared ? { from: shared, to: shared, mm: 0 } : best;
}

/** "0.74 m from edge to edge, between shelf 2 and table T1"; null where the ends do not lie on two things. */
export function sayEdgeToEdge(session: Session, [p, q]: readonly (TapeThing | null)[]): string | null {
  const found = p && q ? edgeToEdge(session, p, q) : null;
  if (!found || !p || !q) return null;
  const { units } = session.classroom().display;
  const names = `${lower(nameOfItem(session, p))} and ${lower(nameOfItem(session, q))}`;
  return found.mm < 1 ? `0 from edge to edge: ${names} touch` : `${sayLength(found.mm, units)} from edge to edge, between ${names}`;
}

/** What was measured, before anybody walks: "4.61 m straight", and from edge to edge where the ends lie on two things. A part each. */
export function sayStraight(session: Session, [from, to]: readonly Point[], on: readonly (TapeThing | null)[]): string[] {
  if (!from || !to) return [];
  const long = distance(from, to);
  const edge = sayEdgeToEdge(session, on);
  const [p, q] = on;
  const apart = p && q ? edgeToEdge(session, p, q)?.mm : undefined;
  // From edge to edge is straight too: one figure is not told twice.
  if (edge && apart !== undefined && apart >= 1 && Math.abs(apart - long) < 1) return [edge.replace(' from', ' straight from')];
  const straight = `${sayLength(long, session.classroom().display.units)} straight from end to end`;
  return edge ? [straight, edge] : [straight];
}

const untold = (said: string): TapeWay => ({ said, width: null, between: [] });

/** How wide the way between two ends of the tape is, in words; `ask` has it worked out. */
export async function wayOfTape(
  session: Session,
  ends: readonly Point[],
  on: readonly (TapeThing | null)[],
  ask: AskWay,
): Promise<TapeWay> {
  const from = stopOf(session, ends[0], on[0] ?? null);
  const to = stopOf(session, ends[1], on[1] ?? null);
  if (from === undefined || to === undefined)
    return untold('How wide the way is can be told between floor, doors, and things that stand on the floor.');
  const answer = await ask({ classroom: session.classroom(), arrangement: session.view().arrangement, from, to });
  if ('failure' in answer) return untold(`How wide the way is could not be worked out (${answer.failure}). Press both ends again.`);
  if (answer.isTaken) return untold('One end lies where chairs stand or a thing is. Press it on free floor.');
  return sayWay(session, answer.way);
}

/** A wall or window is nowhere to walk to. */
function stopOf(session: Session, p: Point | undefined, on: TapeThing | null): WayStop | undefined {
  if (!on) return p;
  if (on.kind === 'piece' || on.kind === 'fixture') return on.id;
  const opening = shapeOfRoom(session.classroom().room).openings.find((o) => o.id === on.id && on.kind === 'opening');
  return opening?.isWayIn ? on.id : undefined;
}

function sayWay(session: Session, answer: WayBetweenAnswer): TapeWay {
  const { room, display } = session.classroom();
  if (!answer.isTold) {
    const said =
      answer.why === 'walls' ? 'The walls do not close, so no way can be told.' : 'One of the two is gone. Press both ends again.';
    return { said, width: null, between: [] };
  }
  const { width, between } = answer;
  if (width <= 0) return { said: 'Nobody can walk from one end to the other: something stands right across.', width: null, between: [] };
  const [p, q] = between;
  const at = answer.at ?? (p && q ? lerp(p, q, 0.5) : null);
  const where = at ? ` at ${cellAt(at, neatlineBounds(room.corners))}` : '';
  const names = [...new Set(between.map(({ id }) => nameOfObstacle(session, id)).filter((name) => name !== ''))];
  const held = names.length === 0 ? '' : names.length === 1 ? `, beside ${names[0]}` : `, between ${names.join(' and ')}`;
  const place = where + held === '' ? '' : `:${(where + held).replace(/^,/, '')}`;
  const said = `Walking from one end to the other, the narrowest place is ${sayLength(width, display.units)} wide${place}.`;
  return { said, width, between: between.map(({ x, y }) => ({ x, y })) };
}

function nameOfObstacle(session: Session, id: string): string {
  const wall = /^wall:(.+)$/.exec(id)?.[1];
  if (wall !== undefined) return `the ${lower(nameOfItem(session, { kind: 'wall', id: wall }))}`;
  const kinds = ['piece', 'fixture'] as const;
  const item = kinds.map((kind): Item => ({ kind, id })).find((one) => thingOf(session, one) !== undefined);
  if (item) return lower(nameOfItem(session, item));
  const isOpening = session.classroom().room.openings.some((opening) => opening.id === id);
  return isOpening ? lower(nameOfItem(session, { kind: 'opening', id })) : '';
}
