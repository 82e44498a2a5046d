import type { Draft } from '#client/session/types.ts';
import { add, type Point, sub } from '#model/geometry/vec.ts';
import { fixtureBody, pieceBody } from '#model/scene/bodies.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { type Handle, resized, turnedTowards } from '../handles.ts';
import { nearDistances } from '../nearDistances.ts';
import { type PlanModel, surroundings } from '../planModel.ts';
import { carried, seatsOf } from '../seats.ts';
import { keepInside } from '../snap.ts';
import { toPlan } from '../viewport.ts';
import { type Drag, inHand } from './drag.ts';

type Change = Partial<Pick<Piece, 'x' | 'y' | 'width' | 'depth' | 'rotation'>>;

/** Resizes or turns the chosen thing by one of its handles. */
export function handleDrag(model: PlanModel, body: SceneBody, handle: Handle, grabbed: Point): Drag | null {
  const thing = body.piece ?? body.fixture;
  if (!thing) return null;
  const grip = sub(toPlan(model.view, handle.at), grabbed);
  const ids = new Set([body.id]);
  let now: Change = {};
  const write = (): void => writeChange(model, body, now);
  return inHand(model, {
    show(p, { isFree }) {
      const at = add(p, grip);
      const around = surroundings(model, ids);
      now = handle.what === 'turn' ? turnedIn(thing, at, isFree, around) : resized(thing, handle.what, at);
      const moved = { ...thing, ...now };
      model.moving = { ids, bodies: [bodyOf(body, now)], from: [body], lines: [], distances: nearDistances(moved, around) };
      if (body.piece && handle.what === 'turn')
        model.session.setView({ preview: { piece: body.id, x: moved.x, y: moved.y, rotation: moved.rotation } });
      else model.session.setView({ draft: draftOf(model, body, moved) });
      return true;
    },
    write,
  });
}

/** The room or the piece as it would be, for the checks. */
function draftOf({ session }: PlanModel, { piece, id }: SceneBody, moved: Piece | Fixture): Draft {
  if (piece) return { pieces: [moved as Piece] };
  const { room } = session.classroom();
  return { room: { ...room, fixtures: room.fixtures.map((fixture) => (fixture.id === id ? (moved as Fixture) : fixture)) } };
}

function turnedIn(thing: Piece | Fixture, towards: Point, isFree: boolean, around: Parameters<typeof keepInside>[1]): Change {
  const rotation = turnedTowards(thing, towards, isFree);
  const { x, y } = keepInside({ ...thing, rotation }, around);
  return { x, y, rotation };
}

function bodyOf(body: SceneBody, change: Change): SceneBody {
  if (body.piece) return pieceBody({ ...body.piece, ...change });
  return body.fixture ? fixtureBody({ ...body.fixture, ...change }) : body;
}

function writeChange({ session }: PlanModel, { piece, fixture, id }: SceneBody, change: Change): void {
  if (fixture) session.commands.changeFixture(id, change);
  if (!piece) return;
  const arrangement = session.arrangement();
  session.commands.changePiece(arrangement.id, id, change);
  const to = { x: change.x ?? piece.x, y: change.y ?? piece.y, rotation: change.rotation ?? piece.rotation };
  if (change.rotation === undefined) return;
  for (const seat of seatsOf(arrangement.pieces, id)) {
    // Seats are read as they stand now, so they follow from where the table stands now.
    const table = arrangement.pieces.find((p) => p.id === id) ?? piece;
    session.commands.movePiece(arrangement.id, seat.id, carried(seat, table, to));
  }
}
