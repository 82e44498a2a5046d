import { distance, type Point } from '#model/geometry/vec.ts';
import { pictureOf } from '#model/schema/picture.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { shapeOfRoom } from './bodies.ts';
import { lower, nameOfItem } from './describe.ts';
import { type Item, itemsInOrder, nextItem } from './items.ts';
import { withTape } from './lateParts.ts';
import { cellAt } from './neatline.ts';
import { itemAt } from './pick.ts';
import { bodyById, boundsOf, moveView, type PlanModel, rawRoomOf } from './planModel.ts';
import { canBeSeveral, isInSet, itemsChosen, toggleChosen } from './set/chosenSet.ts';
import { pressWithTool } from './toolPress.ts';
import { panBy, toPlan, toScreen } from './viewport.ts';

/** With Several, the tape or a remark in hand the keys go from thing to thing without choosing it. */
export const hasCursor = (model: PlanModel): boolean => {
  const kind = model.store.state().tool?.kind;
  return kind === 'several' || kind === 'tape' || kind === 'remark';
};

/** With a tool that is pressed anywhere on the drawing the arrows move a cross, and Enter presses there. */
export const hasCross = (model: PlanModel): boolean => {
  const { tool } = model.store.state();
  return tool?.kind === 'tape' || tool?.kind === 'remark' || (tool?.kind === 'picture' && tool.step === 'scale');
};

/** @returns false after the last thing, so that focus can go on */
export function moveCursor(model: PlanModel, step: 1 | -1): boolean {
  const { session, store } = model;
  const { tool, cursor } = store.state();
  const all = itemsInOrder(session.arrangement(), session.classroom());
  const next = nextItem(tool?.kind === 'several' ? all.filter(canBeSeveral) : all, cursor, step);
  store.set({ cursor: next, cross: null });
  if (!next) return false;
  session.announce(sayCursor(model, next));
  return true;
}

function sayCursor({ session, store }: PlanModel, item: Item): string {
  const name = nameOfItem(session, item);
  if (store.state().tool?.kind === 'remark') return `${name}. Enter puts the remark there.`;
  if (store.state().tool?.kind !== 'several') return `${name}. Enter lays an end of the tape there.`;
  return isInSet(itemsChosen(session), item) ? `${name}, chosen. Enter leaves it out.` : `${name}. Enter chooses it.`;
}

/** Enter or the space bar: chooses what the keys are on, or lays the tape there. */
export function pressCursor(model: PlanModel): void {
  const { session, store } = model;
  const { tool, cursor } = store.state();
  if (!cursor) session.announce(`Tab goes to the first thing${hasCross(model) ? ', arrows to any place' : ''}.`);
  else if (tool?.kind === 'remark') store.set({ remarkAt: { at: middleOf(model, cursor), on: cursor.id } });
  else if (tool?.kind === 'several') toggleChosen(session, cursor);
  else withTape(session, (tape) => tape.layTapeOn(session, cursor));
}

/** The cross by mm, from the middle of what is seen or from the thing that Tab went to; the paper follows it. */
export function moveCross(model: PlanModel, by: Point): true {
  const { session, store } = model;
  const { cross, cursor } = store.state();
  const start = cross ?? (cursor ? middleOf(model, cursor) : middleOfSight(model));
  // Begun anywhere it comes to lie on whole centimetres.
  const on = cross ? start : { x: Math.round(start.x / 10) * 10, y: Math.round(start.y / 10) * 10 };
  const to = { x: on.x + by.x, y: on.y + by.y };
  store.set({ cross: to, cursor: null });
  const seen = toScreen(model.view, to);
  const out = { x: outOf(seen.x, model.size.width), y: outOf(seen.y, model.size.height) };
  if (out.x !== 0 || out.y !== 0) moveView(model, panBy(model.view, { x: -out.x, y: -out.y }));
  session.announce(sayCross(model, to));
  return true;
}

/** Presses the tool in hand where the cross is. */
export function pressCross(model: PlanModel): void {
  const { session, store } = model;
  const { cross } = store.state();
  if (!cross) return;
  pressWithTool(model, cross, NEAR / model.view.k);
  const { tool, picturePoints } = store.state();
  if (tool?.kind === 'picture')
    session.announce(
      picturePoints.length === 1 ? 'One end is here. Arrows and Enter for the other.' : 'Both ends are here. Type how long it is.',
    );
}

/** With the picture in hand the arrows slide it (mm). @returns whether it is in hand */
export function slidePicture({ session, store }: PlanModel, by: Point): boolean {
  const { tool } = store.state();
  const picture = pictureOf(session.classroom().room.picture);
  if (tool?.kind !== 'picture' || tool.step !== 'look' || !picture?.shown) return false;
  session.commands.changeRoom({ picture: { ...picture, x: picture.x + by.x, y: picture.y + by.y } });
  session.announce(`The picture is slid ${sayLength(distance(by, { x: 0, y: 0 }), session.classroom().display.units)}.`);
  return true;
}

/** px within which a press by the keys takes hold of a corner or edge */
const NEAR = 4;
/** px of the sheet's edge that the cross keeps off */
const EDGE = 30;
const outOf = (at: number, size: number): number => Math.min(0, at - EDGE) + Math.max(0, at - size + EDGE);

const middleOfSight = ({ view, size }: PlanModel): Point => toPlan(view, { x: size.width / 2, y: size.height / 2 });

function middleOf(model: PlanModel, { kind, id }: Item): Point {
  const body = bodyById(model, id);
  if (body) return body.center;
  const shape = shapeOfRoom(rawRoomOf(model));
  const line = kind === 'opening' ? shape.openings.find((o) => o.id === id) : shape.walls.find((w) => w.corner === id);
  return line ? { x: (line.a.x + line.b.x) / 2, y: (line.a.y + line.b.y) / 2 } : middleOfSight(model);
}

/** "C3, on shelf 2: 3.20 m from west, 2.10 m from north." */
function sayCross(model: PlanModel, p: Point): string {
  const { session } = model;
  const { units } = session.classroom().display;
  const bounds = boundsOf(model);
  const on = itemAt(p, session.arrangement(), rawRoomOf(model), 0);
  const far = `${sayLength(p.x - bounds.minX, units)} from west, ${sayLength(p.y - bounds.minY, units)} from north`;
  return `${cellAt(p, bounds)}${on ? `, on ${lower(nameOfItem(session, on))}` : ''}: ${far}.`;
}
