import type { Session } from '#client/session/types.ts';
import { add, distance, dot, type Point, scale } from '#model/geometry/vec.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from '../bodies.ts';
import { axesOf, cornersOf, type TurnedBox } from '../box.ts';
import type { Item } from '../items.ts';
import { nameOfCopy } from '../numbers.ts';
import { seatsOf } from '../seats.ts';
import { keepInside } from '../snap.ts';
import { type Thing, thingOf } from '../things.ts';
import { boxRound, shifted } from './arrange.ts';

/** The same things again beside where they stand, as one step: empty, unlocked, chairs with their table. @returns the new items */
export function copyThings(session: Session, items: readonly Item[]): Item[] {
  const chosen = items.flatMap((item) => {
    const thing = thingOf(session, item);
    return thing ? [{ item, thing }] : [];
  });
  const things = chosen.map(({ thing }) => thing);
  const [first] = things;
  if (!first) return [];
  const { pieces } = session.arrangement();
  const ids = new Set(things.map(({ id }) => id));
  const seats = things.flatMap((table) => (table.kind === 'table' ? seatsOf(pieces, table.id).filter(({ id }) => !ids.has(id)) : []));
  const step = freeStep(session, [...things, ...seats], first.rotation);
  const tables = new Map<string, string>();
  session.undo.beginStep();
  const made = new Map<string, string>();
  // A chair looks for the copy of its table: that has to be there.
  for (const { item, thing } of [...chosen].sort((p, q) => Number(q.thing.kind === 'table') - Number(p.thing.kind === 'table'))) {
    const id = item.kind === 'fixture' ? copyFixture(session, thing as Fixture, step) : copyPiece(session, thing as Piece, step, tables);
    if (thing.kind === 'table') tables.set(thing.id, id);
    made.set(thing.id, id);
  }
  for (const seat of seats) copyPiece(session, seat, step, tables);
  session.undo.endStep();
  return chosen.map(({ item, thing }) => ({ kind: item.kind, id: made.get(thing.id) ?? '' }));
}

function copyPiece(session: Session, piece: Piece, step: Point, tables: ReadonlyMap<string, string>): string {
  const { id: _, number: __, ...same } = piece;
  const arrangement = session.arrangement();
  const copy: Parameters<typeof session.commands.addPiece>[1] = {
    ...same,
    kind: piece.kind,
    width: piece.width,
    depth: piece.depth,
    ...add(piece, step),
    name: nameOfCopy(session.classroom(), piece),
    locked: false,
    table: piece.table === null ? null : (tables.get(piece.table) ?? piece.table),
  };
  return session.commands.addPiece(arrangement.id, copy);
}

function copyFixture(session: Session, fixture: Fixture, step: Point): string {
  const { id: _, ...same } = fixture;
  const { kind, width, depth } = fixture;
  return session.commands.addFixture({ ...same, kind, width, depth, ...add(fixture, step) });
}

/** The way to beside, before or behind, where nothing stands yet; else half upon the old, where the copies are seen. */
function freeStep(session: Session, things: readonly Thing[], rotation: number): Point {
  const { room } = session.classroom();
  const shape = shapeOfRoom(room);
  const round = boxRound(things, rotation);
  const { u, v } = axesOf(rotation);
  const steps = [scale(u, round.width), scale(u, -round.width), scale(v, round.depth), scale(v, -round.depth)];
  const others = [
    ...session.arrangement().pieces.flatMap((p) => (p.kind === 'rug' ? [] : [bodyOfPiece(p).footprint])),
    ...room.fixtures.flatMap((f) => (f.walkable ? [] : [bodyOfFixture(f).footprint])),
  ];
  const isFree = (step: Point): boolean =>
    shifted<TurnedBox>(things, step).every((box) => {
      if (distance(keepInside(box, shape), box) > 1) return false;
      const corners = cornersOf(box);
      return others.every((other) => areApart(corners, other));
    });
  const free = steps.find(isFree);
  if (free) return free;
  const near = keepInside({ ...round, x: round.x + 150, y: round.y + 150 }, shape);
  return { x: near.x - round.x, y: near.y - round.y };
}

/** True when a line along an edge of one of two convex rings parts them (touching counts as apart). */
function areApart(p: readonly Point[], q: readonly Point[]): boolean {
  return [p, q].some((ring) =>
    ring.some((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a;
      const normal = { x: -(b.y - a.y), y: b.x - a.x };
      const size = Math.hypot(normal.x, normal.y) || 1;
      const along = (points: readonly Point[]) => points.map((point) => dot(point, normal) / size);
      return Math.max(...along(p)) <= Math.min(...along(q)) + 1 || Math.max(...along(q)) <= Math.min(...along(p)) + 1;
    }),
  );
}
