import type { Session } from '#client/session/types.ts';
import { centroid } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import { doAgain, takeBack } from '../frame/takeBack.ts';
import { hasCross, hasCursor, moveCross, moveCursor, pressCross, pressCursor, slidePicture } from './cursorKeys.ts';
import { describeItem } from './describe.ts';
import { type Item, itemsInOrder, nextItem } from './items.ts';
import { fitWholeRoom, moveView, type PlanModel, roomOf } from './planModel.ts';
import { planStoreOf } from './planStore.ts';
import type { PlanPointer } from './pointer.ts';
import { chooseAll, itemsChosen, saySet } from './set/chosenSet.ts';
import { putAwayChosen, slideChosen, turnChosen, verbOfKey } from './set/chosenVerbs.ts';
import { finishWalls, setDown } from './toolPress.ts';
import { noDraft, takeUpTool, toolOfKey } from './tools.ts';
import { choose } from './verbs.ts';
import { panBy, zoomAbout } from './viewport.ts';

export interface PlanKeys {
  /** @returns true when the key was for the plan */
  press(event: KeyPress): boolean;
}

type KeyPress = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'> & { readonly code?: string };

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** mm a press of an arrow moves a thing */
const stepOf = ({ shiftKey, altKey }: KeyPress): number => (altKey ? 10 : shiftKey ? 500 : 50);

/** Keys while the drawing has focus. Tab goes from thing to thing; after Escape has let go, Tab leaves the drawing. */
export function createPlanKeys(model: PlanModel, pointer: PlanPointer, goToFront: () => boolean, showKeys: () => void): PlanKeys {
  const { session, store } = model;
  let isLeaving = false;

  function tab(step: 1 | -1): boolean {
    if (isLeaving) {
      isLeaving = false;
      return false;
    }
    if (hasCursor(model)) return moveCursor(model, step);
    const items = itemsInOrder(session.arrangement(), session.classroom());
    const next = nextItem(items, session.view().chosen, step);
    choose(session, next);
    return next !== null;
  }

  /** Each press undoes one thing: a drag, a corner drawn, the tool, the choice. */
  function letGo(): boolean {
    const { tool, corners, tape } = store.state();
    if (pointer.cancel()) {
      session.announce('It is back where it was.');
      return true;
    }
    if (corners.length > 0) {
      store.set({ corners: corners.slice(0, -1) });
      return true;
    }
    if (tool || tape.length > 0) {
      store.set(noDraft);
      if (tool?.kind === 'several') session.announce(sayChosen(session));
      return true;
    }
    isLeaving = true;
    if (!session.view().chosen) return false;
    choose(session, null);
    session.announce('Nothing is chosen. Tab leaves the drawing.');
    return true;
  }

  function enter(item: Item | null): boolean {
    const { tool, corners } = store.state();
    if (tool?.kind === 'wall' && corners.length >= 3) {
      if (finishWalls(session, corners)) store.set({ corners: [], tool: null });
      return true;
    }
    if (hasCursor(model) || hasCross(model)) {
      pressAtKeys(model);
      return true;
    }
    if (
      tool &&
      tool.kind !== 'wall' &&
      tool.kind !== 'several' &&
      tool.kind !== 'tape' &&
      tool.kind !== 'remark' &&
      tool.kind !== 'picture'
    ) {
      setDown(model, centroid(roomOf(model).outline));
      return true;
    }
    if (item?.kind !== 'piece') return false;
    return openFront(session, item.id, goToFront);
  }

  return {
    press(event) {
      const items = itemsChosen(session);
      const item = items[0] ?? null;
      if (event.key === 'Tab') return tab(event.shiftKey ? -1 : 1);
      if (event.key === 'Escape') return letGo();
      isLeaving = false;
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z') {
        if (event.shiftKey) doAgain(session);
        else takeBack(session);
        return true;
      }
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') {
        chooseAll(session);
        return true;
      }
      if (event.ctrlKey || event.metaKey) return false;
      const arrow = arrows[event.key];
      if (arrow && slidePicture(model, { x: arrow.x * stepOf(event), y: arrow.y * stepOf(event) })) return true;
      if (arrow && hasCross(model)) return moveCross(model, { x: arrow.x * stepOf(event), y: arrow.y * stepOf(event) });
      if (arrow) return slideOrPan(model, items, arrow, stepOf(event));
      if (event.key === 'Enter') return enter(item);
      if (event.key === ' ' && (hasCursor(model) || hasCross(model))) {
        pressAtKeys(model);
        return true;
      }
      if ((event.key === 'Delete' || event.key === 'Backspace') && item) return putAwayChosen(session, items);
      if (event.key === '?' && store.state().hasLetterKeys) {
        showKeys();
        return true;
      }
      return letter(model, event, items);
    },
  };
}

/** Where the arrows have put the cross, else on the thing that Tab went to. */
function pressAtKeys(model: PlanModel): void {
  if (model.store.state().cross) pressCross(model);
  else pressCursor(model);
}

const sayChosen = (session: Session): string => {
  const items = itemsChosen(session);
  if (items.length > 1) return `${saySet(session, items)}. Arrows slide them.`;
  return items[0] ? describeItem(session, items[0]) : 'Nothing is chosen.';
};

function slideOrPan(model: PlanModel, items: readonly Item[], arrow: Point, step: number): boolean {
  if (items.length > 0) slideChosen(model.session, items, { x: arrow.x * step, y: arrow.y * step });
  else moveView(model, panBy(model.view, { x: -arrow.x * 40, y: -arrow.y * 40 }));
  return true;
}

/**
 * Shows a shelf's front. `goToFront` puts the keys there; false: the page has to turn to it first, which is told.
 * @returns whether the press is used up
 */
export function openFront(session: Session, id: string, goToFront?: () => boolean): boolean {
  const piece = session.arrangement().pieces.find((p) => p.id === id);
  const side = piece?.kind === 'shelf' ? piece.sides[0] : undefined;
  if (!side) {
    session.announce('It has no open side to look at.');
    return true;
  }
  session.setView({ frontOf: { piece: id, side } });
  const store = planStoreOf(session);
  store.set({ frontAsked: store.state().frontAsked + 1 });
  if (!goToFront) session.announce('Its front is open.');
  else if (goToFront()) session.announce('Its front is open: Tab goes through the trays, Escape comes back to the plan.');
  else session.announce('Its front is open, in place of what stood there.');
  return true;
}

/** Degrees that a press of [ or ] turns by: with Alt free, one at a time. Some keyboards write something else with Alt. */
function turnOf({ key, code, altKey }: KeyPress): number {
  const sign = key === '[' || (altKey && code === 'BracketLeft') ? -1 : key === ']' || (altKey && code === 'BracketRight') ? 1 : 0;
  return sign * (altKey ? 1 : 15);
}

function letter(model: PlanModel, event: KeyPress, items: readonly Item[]): boolean {
  const { key } = event;
  if (!model.store.state().hasLetterKeys) return false;
  const middle = { x: model.size.width / 2, y: model.size.height / 2 };
  if (key === '+' || key === '=') moveView(model, zoomAbout(model.view, middle, 1.25));
  else if (key === '-') moveView(model, zoomAbout(model.view, middle, 0.8));
  else if (key === '0') fitWholeRoom(model);
  else if (turnOf(event) !== 0 && items.length > 0) turnChosen(model.session, items, turnOf(event));
  else {
    const verb = verbOfKey(key, items);
    if (verb) {
      verb.run(model.session, items);
      return true;
    }
    const tool = toolOfKey(key);
    if (!tool) return false;
    takeUpTool(model.session, tool);
  }
  return true;
}
