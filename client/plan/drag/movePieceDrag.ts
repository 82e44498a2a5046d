import { add, type Point, sub } from '#model/geometry/vec.ts';
import { fixtureBody, pieceBody } from '#model/scene/bodies.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Fixture, Piece, Room } from '#model/schema/types.ts';
import { bodyOfPiece } from '../bodies.ts';
import { nearDistances } from '../nearDistances.ts';
import { type PlanModel, surroundings } from '../planModel.ts';
import { sayRest } from '../restWords.ts';
import { carried, seatsOf } from '../seats.ts';
import { type Snapped, snap } from '../snap.ts';
import { type Drag, inHand } from './drag.ts';

/** px within which things draw each other */
const SNAP_PX = 9;
/** mm: whatever the enlargement, never from farther off than this */
const SNAP_MOST = 150;

/** mm: what comes so near to a wall comes to rest flush with it */
export const TO_WALL = 150;

export const snapTolerance = (model: PlanModel): number => Math.min(SNAP_MOST, SNAP_PX / model.view.k);

/** Loose places come to lie on whole centimetres, free ones on whole mm; what is snapped goes on from there. */
export function tidyPlace(p: Point, isFree: boolean): Point {
  const step = isFree ? 1 : 10;
  return { x: Math.round(p.x / step) * step, y: Math.round(p.y / step) * step };
}

type Place = { x: number; y: number; rotation: number };

/** Moves a piece, its seats with it; the checks follow the preview each frame. */
export function movePieceDrag(model: PlanModel, piece: Piece, grabbed: Point): Drag {
  const { session } = model;
  const arrangement = session.arrangement().id;
  const followers = seatsOf(session.arrangement().pieces, piece.id);
  const ids = new Set([piece.id, ...followers.map((seat) => seat.id)]);
  const grip = sub(piece, grabbed);
  let now: Place = { x: piece.x, y: piece.y, rotation: piece.rotation };

  const write = (): void => {
    session.commands.movePiece(arrangement, piece.id, now);
    for (const seat of followers) session.commands.movePiece(arrangement, seat.id, carried(seat, piece, now));
  };
  return inHand(model, {
    show(p, { isFree }) {
      const around = surroundings(model, ids);
      const turnsToWall = piece.kind === 'shelf' || piece.kind === 'mat-stand';
      const snapped = snap({ ...piece, ...tidyPlace(add(p, grip), isFree) }, around, {
        tolerance: snapTolerance(model),
        toWall: TO_WALL,
        turnsToWall,
        isFree,
      });
      now = { x: snapped.x, y: snapped.y, rotation: snapped.rotation };
      sayRest(model, snapped.lines);
      model.moving = {
        ids,
        bodies: [pieceBody({ ...piece, ...now }), ...followers.map((seat) => pieceBody({ ...seat, ...carried(seat, piece, now) }))],
        from: [bodyOfPiece(piece)],
        lines: snapped.lines,
        distances: nearDistances({ ...piece, ...now }, around),
      };
      const seats = followers.map((seat) => ({ ...seat, ...carried(seat, piece, now) }));
      session.setView({ preview: { piece: piece.id, ...now }, draft: seats.length > 0 ? { pieces: seats } : null });
      return true;
    },
    write,
  });
}

/** Moves what belongs to the room. */
export function moveFixtureDrag(model: PlanModel, fixture: Fixture, grabbed: Point): Drag {
  const { session } = model;
  const ids = new Set([fixture.id]);
  const grip = sub(fixture, grabbed);
  const turnsToWall = fixture.kind === 'sink' || fixture.kind === 'radiator' || fixture.kind === 'built-in' || fixture.kind === 'hearth';
  let now: Place = { x: fixture.x, y: fixture.y, rotation: fixture.rotation };
  const write = (): void => {
    session.commands.changeFixture(fixture.id, now);
  };
  return inHand(model, {
    show(p, { isFree }) {
      const around = surroundings(model, ids);
      const snapped = snap({ ...fixture, ...tidyPlace(add(p, grip), isFree) }, around, {
        tolerance: snapTolerance(model),
        toWall: TO_WALL,
        turnsToWall,
        isFree,
      });
      now = { x: snapped.x, y: snapped.y, rotation: snapped.rotation };
      sayRest(model, snapped.lines);
      session.setView({ draft: { room: withFixture(session.classroom().room, { ...fixture, ...now }) } });
      model.moving = movingFixture(fixture, now, snapped, ids, around);
      return true;
    },
    write,
  });
}

const withFixture = (room: Room, moved: Fixture): Room => ({
  ...room,
  fixtures: room.fixtures.map((fixture) => (fixture.id === moved.id ? moved : fixture)),
});

function movingFixture(
  fixture: Fixture,
  now: Place,
  snapped: Snapped,
  ids: ReadonlySet<string>,
  around: Parameters<typeof nearDistances>[1],
) {
  const body: SceneBody = fixtureBody({ ...fixture, ...now });
  const from: SceneBody = fixtureBody(fixture);
  return { ids, bodies: [body], from: [from], lines: snapped.lines, distances: nearDistances({ ...fixture, ...now }, around) };
}
