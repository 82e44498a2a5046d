import { nameOfItem } from './describe.ts';
import { type Item, itemsInOrder, nextItem } from './items.ts';
import { withTape } from './lateParts.ts';
import type { PlanModel } from './planModel.ts';
import { canBeSeveral, isInSet, itemsChosen, toggleChosen } from './set/chosenSet.ts';

/** With Several or the tape in hand the keys go from thing to thing without choosing it. */
export const hasCursor = (model: PlanModel): boolean => {
  const kind = model.store.state().tool?.kind;
  return kind === 'several' || kind === 'tape';
};

/** @returns false after the last thing, so that focus can go on */
export function moveCursor(model: PlanModel, step: 1 | -1): boolean {
  const { session, store } = model;
  const { tool, cursor } = store.state();
  const all = itemsInOrder(session.arrangement(), session.classroom().room);
  const next = nextItem(tool?.kind === 'several' ? all.filter(canBeSeveral) : all, cursor, step);
  store.set({ cursor: next });
  if (!next) return false;
  session.announce(sayCursor(model, next));
  return true;
}

function sayCursor({ session, store }: PlanModel, item: Item): string {
  const name = nameOfItem(session, item);
  if (store.state().tool?.kind !== 'several') return `${name}. Enter lays an end of the tape there.`;
  return isInSet(itemsChosen(session), item) ? `${name}, chosen. Enter leaves it out.` : `${name}. Enter chooses it.`;
}

/** Enter or the space bar: chooses what the keys are on, or lays the tape there. */
export function pressCursor(model: PlanModel): void {
  const { session, store } = model;
  const { tool, cursor } = store.state();
  if (!cursor) session.announce('Tab goes to the first thing.');
  else if (tool?.kind === 'several') toggleChosen(session, cursor);
  else withTape(session, (tape) => tape.layTapeOn(session, cursor));
}
