import { add, type Point, sub } from '#model/geometry/vec.ts';
import { fixtureBody, pieceBody } from '#model/scene/bodies.ts';
import type { SceneBody } from '#model/scene/types.ts';
import type { Fixture, Piece } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece } from '../bodies.ts';
import type { Item } from '../items.ts';
import { nearDistances } from '../nearDistances.ts';
import { type PlanModel, surroundings } from '../planModel.ts';
import { sayRest } from '../restWords.ts';
import { boxRound, keptTogether, type SetBox, shifted } from '../set/arrange.ts';
import { moversOf } from '../set/chosenSet.ts';
import { writeAll } from '../set/writeAll.ts';
import { snap } from '../snap.ts';
import { type Drag, inHand, WRITE_EVERY } from './drag.ts';
import { snapTolerance, TO_WALL, tidyPlace } from './movePieceDrag.ts';

/** ms: however many things move, what is written meanwhile is no more than this often; the checks follow each frame all the same */
const RAREST = 500;

/** Moves a whole set by the thing that was grabbed; it rests at walls and neighbours as one box. */
export function moveSetDrag(model: PlanModel, items: readonly Item[], grabbedItem: Item, grabbed: Point): Drag | null {
  const { session } = model;
  const movers = moversOf(session, items);
  const things = [...movers.things, ...movers.seats.map(({ seat }) => seat)];
  // A chair that was grabbed beside its table goes with it, and leads all the same.
  const lead = things.find(({ id }) => id === grabbedItem.id);
  if (!lead) return null;
  const ids = new Set(things.map(({ id }) => id));
  const isPiece = new Set(session.arrangement().pieces.map(({ id }) => id));
  const before = new Map<string, SetBox>(things.map((thing) => [thing.id, thing]));
  const round = boxRound(movers.things, (movers.things.find(({ id }) => id === lead.id) ?? movers.things[0] ?? lead).rotation);
  let now: readonly SetBox[] = things;

  const placed = (thing: Piece | Fixture, box: SetBox) => ({ ...thing, x: box.x, y: box.y });
  const write = (): void => writeAll(session, new Map(now.map((box) => [box.id, box])), [], () => ({}));
  const preview = (): void => {
    const moved = things.map((thing, i) => placed(thing, now[i] ?? thing));
    const pieces = moved.filter(({ id }) => isPiece.has(id)) as Piece[];
    const fixtures = new Map(moved.filter(({ id }) => !isPiece.has(id)).map((fixture) => [fixture.id, fixture as Fixture]));
    const { room } = session.classroom();
    const first = pieces.find(({ id }) => id === lead.id) ?? pieces[0];
    session.setView({
      preview: first ? { piece: first.id, x: first.x, y: first.y, rotation: first.rotation } : null,
      draft: { pieces, ...(fixtures.size > 0 && { room: { ...room, fixtures: room.fixtures.map((f) => fixtures.get(f.id) ?? f) } }) },
    });
    model.moving = {
      ...(model.moving ?? { ids, from: things.map((thing) => bodyAsItStands(thing, isPiece)), lines: [], distances: [] }),
      bodies: moved.map((thing): SceneBody => (isPiece.has(thing.id) ? pieceBody(thing as Piece) : fixtureBody(thing as Fixture))),
    };
  };
  return inHand(model, {
    show(p, { isFree }) {
      const around = surroundings(model, ids);
      const by = sub(tidyPlace(add(lead, sub(p, grabbed)), isFree), lead);
      const snapped = snap({ ...round, ...add(round, by) }, around, {
        tolerance: snapTolerance(model),
        toWall: TO_WALL,
        turnsToWall: false,
        isFree,
        isLoose: true,
      });
      const kept = keptTogether(
        shifted(
          things.map((thing): SetBox => thing),
          sub(snapped, round),
        ),
        around,
        before,
      );
      if (!kept) return false;
      now = kept;
      preview();
      const moved = now[0] ? sub(now[0], things[0] ?? now[0]) : { x: 0, y: 0 };
      const isHeld = Math.hypot(moved.x - snapped.x + round.x, moved.y - snapped.y + round.y) < 1;
      const lines = isHeld ? snapped.lines : [];
      if (model.moving) model.moving = { ...model.moving, lines, distances: nearDistances({ ...round, ...add(round, moved) }, around) };
      sayRest(model, lines);
      return true;
    },
    write,
    every: Math.min(RAREST, WRITE_EVERY * things.length),
  });
}

const bodyAsItStands = (thing: Piece | Fixture, isPiece: ReadonlySet<string>): SceneBody =>
  isPiece.has(thing.id) ? bodyOfPiece(thing as Piece) : bodyOfFixture(thing as Fixture);
