import type { Session } from '#client/session/types.ts';
import { newId } from '#model/document/ids.ts';
import { isSimple, signedArea } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import { buildRoom } from '#model/scene/room.ts';
import type { Corner } from '#model/schema/types.ts';
import { shapeOfRoom } from './bodies.ts';
import { nameOfItem, openingKindName } from './describe.ts';
import { ghostAt } from './ghost.ts';
import { withTape } from './lateParts.ts';
import { newOpening, newPiece } from './newThings.ts';
import { nextNumber } from './numbers.ts';
import { itemAt } from './pick.ts';
import { type PlanModel, rawRoomOf } from './planModel.ts';
import { openingsOnNewWalls } from './roomShape.ts';
import { canBeSeveral, toggleChosen } from './set/chosenSet.ts';
import { tapePoint } from './tape.ts';
import { choose } from './verbs.ts';
import { nextCorner } from './wallDraft.ts';

/** A press on the drawing with a tool in hand. `reach` in mm. */
export function pressWithTool(model: PlanModel, p: Point, reach: number): void {
  const { tool } = model.store.state();
  switch (tool?.kind) {
    case 'wall':
      pressWall(model, p, Math.max(reach, 14 / model.view.k));
      return;
    case 'tape':
      pressTape(model, p, reach);
      return;
    case 'several':
      pressSeveral(model, p, reach);
      return;
    case 'picture':
      pressPicture(model, p);
      return;
    case 'remark':
      model.store.set({ remarkAt: { at: p, on: itemAt(p, model.session.arrangement(), rawRoomOf(model), 0)?.id ?? null } });
      return;
    case 'opening':
    case 'piece':
    case 'fixture':
      setDown(model, p);
  }
}

function pressWall(model: PlanModel, p: Point, reach: number): void {
  const { corners } = model.store.state();
  const next = nextCorner(corners, p, reach);
  if (next.closes) {
    if (finishWalls(model.session, corners)) model.store.set({ corners: [], tool: null });
    return;
  }
  model.store.set({ corners: [...corners, next.at] });
}

/** Two ends on the picture; a third press begins again. */
function pressPicture(model: PlanModel, p: Point): void {
  const { tool, picturePoints } = model.store.state();
  if (tool?.kind === 'picture' && tool.step === 'scale')
    model.store.set({ picturePoints: picturePoints.length === 1 ? [...picturePoints, p] : [p] });
}

function pressTape(model: PlanModel, p: Point, reach: number): void {
  const at = tapePoint(model, p, reach);
  withTape(model.session, (tape) => tape.layTapeAt(model.session, at));
}

/** A thing more, or one less. */
function pressSeveral(model: PlanModel, p: Point, reach: number): void {
  const item = itemAt(p, model.session.arrangement(), rawRoomOf(model), reach);
  if (item && canBeSeveral(item)) toggleChosen(model.session, item);
  else model.session.announce('Draw an area round several things, or press one after the other.');
}

/** Sets the thing in hand down at a point and chooses it. */
export function setDown(model: PlanModel, p: Point): void {
  const { session, store } = model;
  const { tool, size } = store.state();
  const ghost = ghostAt(model, p);
  if (!ghost || !tool) {
    session.announce('Draw the walls first: doors and windows belong to a wall.');
    return;
  }
  if (ghost.kind === 'opening' && tool.kind === 'opening') {
    const isFirst = !session.classroom().room.openings.some((o) => o.kind !== 'window');
    const place = { from: ghost.wall.corner, offset: ghost.offset, width: ghost.width };
    const id = session.commands.addOpening(newOpening(tool.of, place, isFirst));
    chooseNew(session, { kind: 'opening', id }, openingKindName(tool.of));
  }
  if (ghost.kind === 'piece' && tool.kind === 'piece') {
    const { x, y, rotation } = ghost.piece;
    const arrangement = session.arrangement();
    const name =
      tool.of === 'shelf' || tool.of === 'table'
        ? `${tool.of === 'shelf' ? 'Shelf' : 'Table'} ${nextNumber(session.classroom(), tool.of)}`
        : '';
    const id = session.commands.addPiece(arrangement.id, newPiece(tool.of, size, { x, y, rotation }, name));
    chooseNew(session, { kind: 'piece', id });
  }
  if (ghost.kind === 'fixture' && tool.kind === 'fixture') {
    const { x, y, rotation } = ghost.fixture;
    const id = session.commands.addFixture({ kind: tool.of, x, y, rotation, ...size });
    chooseNew(session, { kind: 'fixture', id });
  }
  store.set({ tool: null });
}

function chooseNew(session: Session, item: Parameters<typeof choose>[1] & object, word = nameOfItem(session, item)): void {
  choose(session, item);
  session.announce(`${word} is set down. Arrows move it, ${areFieldsFolded() ? '“Figures” under More' : 'the fields'} give it its size.`);
}

/** On a tablet the typed figures come when they are asked for. */
const areFieldsFolded = (): boolean => globalThis.matchMedia?.('(min-width: 900px) and (max-width: 1279px)').matches ?? false;

/** The drawn corners become the walls; doors and windows that stood in old walls go to the nearest new ones. */
export function finishWalls(session: Session, drawn: readonly Point[]): boolean {
  const ring = signedArea(drawn) < 0 ? [...drawn].reverse() : drawn;
  if (ring.length < 3 || !isSimple(ring)) {
    session.announce(
      ring.length < 3 ? 'A room has at least three corners.' : 'These walls cross each other. Take the last corner back and go round once.',
    );
    return false;
  }
  const { room } = session.classroom();
  const corners = ring.map(({ x, y }): Corner => ({ id: newId('c'), x, y }));
  const moved = openingsOnNewWalls(shapeOfRoom(room), buildRoom({ ...room, corners }));
  session.undo.beginStep();
  session.commands.setCorners(corners);
  for (const { id, from, offset } of moved) session.commands.changeOpening(id, { from, offset });
  session.undo.endStep();
  const kept = moved.length === 0 ? '' : ` ${moved.length} doors and windows went to the nearest new walls: look at each.`;
  session.announce(`The walls stand.${kept}`);
  return true;
}
