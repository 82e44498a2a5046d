import { mayChange } from '#client/session/lookOnly.ts';
import { distance, type Point } from '#model/geometry/vec.ts';
import { areaDrag } from './drag/areaDrag.ts';
import type { Drag } from './drag/drag.ts';
import { moveFixtureDrag, movePieceDrag } from './drag/movePieceDrag.ts';
import { pictureDrag } from './drag/pictureDrag.ts';
import { moveCornerDrag, moveOpeningDrag, moveWallDrag } from './drag/roomDrags.ts';
import { handleDrag } from './drag/shapeDrags.ts';
import { handleAt, handlesOf } from './handles.ts';
import { wordsBeside } from './handleWords.ts';
import { type Item, isSame } from './items.ts';
import { setDragsHere } from './lateParts.ts';
import { itemAt } from './pick.ts';
import { bodyById, moveView, type PlanModel, rawRoomOf, roomOf } from './planModel.ts';
import { remarkUnder, sayRemark } from './remarkUnder.ts';
import { isInSet, itemsChosen, saySet, toggleChosen } from './set/chosenSet.ts';
import { tellItem } from './tellItem.ts';
import { isLocked, thingOf } from './things.ts';
import { pressWithTool } from './toolPress.ts';
import { choose } from './verbs.ts';
import { panBy, pinch, toPlan, type Viewport, zoomAbout } from './viewport.ts';

/** What a pointer event says, in px of the canvas. */
export interface Press {
  readonly id: number;
  readonly at: Point;
  readonly isTouch: boolean;
  readonly isFree: boolean;
  /** The middle button moves the paper. */
  readonly isPan: boolean;
  /** Shift: one more, or an area more. */
  readonly isMore?: boolean;
}

/** px a pointer may tremble before it is a drag */
const TREMBLE = { mouse: 3, touch: 8 } as const;
/** px off a thing that still mean it */
const REACH = { mouse: 4, touch: 22 } as const;
/** px beside the number of a remark that still mean it: 44 px for a finger */
const REMARK_REACH = { mouse: 2, touch: 14 } as const;

type Gesture =
  | { readonly kind: 'pressed'; readonly press: Press; readonly item: Item | null; readonly start: () => Drag | null }
  | { readonly kind: 'drag'; readonly drag: Drag }
  | { readonly kind: 'pan'; readonly from: Point; readonly view: Viewport }
  | { readonly kind: 'pinch'; readonly from: readonly [Point, Point]; readonly view: Viewport };

export interface PlanPointer {
  down(press: Press): void;
  move(press: Press): void;
  up(press: Press): void;
  /** The press was taken away, or Escape: whatever was dragged goes back. @returns whether something was dragged */
  cancel(): boolean;
  leave(): void;
  wheel(at: Point, by: Point, isZoom: boolean): void;
  isDragging(): boolean;
}

/** Fingers and mouse on the plan: one chooses and slides, two move the paper and enlarge it. */
export function createPlanPointer(model: PlanModel): PlanPointer {
  const down = new Map<number, Point>();
  let gesture: Gesture | null = null;
  let waiting: Press | null = null;
  let frame = 0;

  function apply(press: Press): void {
    if (gesture?.kind === 'pressed') {
      const tremble = press.isTouch ? TREMBLE.touch : TREMBLE.mouse;
      if (distance(press.at, gesture.press.at) < tremble) return;
      // Who may only look moves the paper, never a thing.
      const drag = mayChange(model.session) ? gesture.start() : null;
      // What was said of it no longer holds; how it comes to rest is said once, at the end.
      if (drag && gesture.item) model.session.announce('');
      gesture = drag ? { kind: 'drag', drag } : { kind: 'pan', from: gesture.press.at, view: model.view };
    }
    if (gesture?.kind === 'drag') gesture.drag.to(toPlan(model.view, press.at), { isFree: press.isFree });
    if (gesture?.kind === 'pan') moveView(model, panBy(gesture.view, { x: press.at.x - gesture.from.x, y: press.at.y - gesture.from.y }));
    if (gesture?.kind === 'pinch') {
      const now = twoOf(down);
      if (now) moveView(model, pinch(gesture.view, gesture.from, now));
    }
    if (gesture === null && model.store.state().tool) model.redraw('over');
  }

  // Pointers report more often than the screen is drawn: one step a frame is enough.
  function later(press: Press): void {
    waiting = press;
    if (frame !== 0) return;
    frame = requestAnimationFrame(() => {
      frame = 0;
      flush();
    });
  }
  function flush(): void {
    const press = waiting;
    waiting = null;
    if (press) apply(press);
  }
  function drop(): boolean {
    waiting = null;
    const wasDragging = gesture?.kind === 'drag';
    if (gesture?.kind === 'drag') gesture.drag.cancel();
    gesture = null;
    return wasDragging;
  }

  function finish(press: Press): void {
    const done = gesture;
    gesture = null;
    if (done?.kind === 'drag') {
      done.drag.end();
      if (!done.drag.saysItself) sayAfterDrag(model);
    }
    if (done?.kind !== 'pressed') return;
    if (model.store.state().tool) pressWithTool(model, toPlan(model.view, press.at), reachOf(press) / model.view.k);
    else if (press.isMore && done.item) toggleChosen(model.session, done.item);
    else if (!press.isMore) chooseOrRead(press, done.item);
    if (press.isTouch) model.pointer = null;
    model.redraw('over');
  }

  /** The number of a remark is drawn above all things: a press on it reads it. */
  function chooseOrRead(press: Press, item: Item | null): void {
    const remark = remarkUnder(model, press.at, press.isTouch ? REMARK_REACH.touch : REMARK_REACH.mouse);
    if (remark) model.session.announce(sayRemark(remark));
    else choose(model.session, item);
  }

  /** One finger, or all of them, are off the plan. */
  function letUp(id?: number): void {
    if (id === undefined) down.clear();
    else down.delete(id);
  }

  return {
    down(press) {
      down.set(press.id, press.at);
      model.isTouch = press.isTouch;
      const two = twoOf(down);
      if (two) {
        drop();
        gesture = { kind: 'pinch', from: two, view: model.view };
        return;
      }
      if (press.isPan) {
        gesture = { kind: 'pan', from: press.at, view: model.view };
        return;
      }
      if (model.store.state().tool) {
        model.pointer = press.at;
        model.redraw('over');
        const { tool } = model.store.state();
        const slides = tool?.kind === 'picture' && tool.step === 'look';
        const grabbed = toPlan(model.view, press.at);
        const start = (): Drag | null => {
          if (tool?.kind === 'several') return areaDrag(model, grabbed, () => model.store.set({ tool: null, cursor: null }));
          return slides ? pictureDrag(model, grabbed) : null;
        };
        gesture = { kind: 'pressed', press, item: null, start };
        return;
      }
      gesture = pressOn(model, press);
    },
    move(press) {
      if (down.has(press.id)) down.set(press.id, press.at);
      model.pointer = press.at;
      if (gesture || model.store.state().tool) later(press);
    },
    up(press) {
      flush();
      finish(press);
      // What was pressed was meant where the paper lay.
      letUp(press.id);
    },
    cancel() {
      const wasDragging = drop();
      letUp();
      return wasDragging;
    },
    leave() {
      model.pointer = null;
      model.redraw('over');
    },
    wheel(at, by, isZoom) {
      if (isZoom) moveView(model, zoomAbout(model.view, at, Math.exp(-by.y * 0.0022)));
      else moveView(model, panBy(model.view, { x: -by.x, y: -by.y }));
    },
    isDragging: () => gesture?.kind === 'drag',
  };
}

function twoOf(down: ReadonlyMap<number, Point>): readonly [Point, Point] | null {
  const [p, q] = [...down.values()];
  return p && q ? [p, q] : null;
}

/** What was dragged and how it came to rest. */
function sayAfterDrag({ session, store }: PlanModel): void {
  const { rest } = store.state();
  if (rest !== '') store.set({ rest: '' });
  const items = itemsChosen(session);
  const [item] = items;
  if (!item) return;
  if (items.length === 1) tellItem(session, item, rest);
  else session.announce(`${saySet(session, items)}${rest === '' ? '' : `. ${rest}`}`);
}

const reachOf = (press: Press): number => (press.isTouch ? REACH.touch : REACH.mouse);

/** A press without a tool: a handle of the chosen thing, a thing, or bare floor (which moves the paper). */
function pressOn(model: PlanModel, press: Press): Gesture {
  const { session } = model;
  const at = toPlan(model.view, press.at);
  const { chosen, alsoChosen } = session.view();
  const body =
    chosen && alsoChosen.length === 0 && (chosen.kind === 'piece' || chosen.kind === 'fixture') ? bodyById(model, chosen.id) : undefined;
  const handles = body && !body.piece?.locked ? handlesOf(body, model.view, wordsBeside(model, body.id), press.isTouch) : [];
  const handle = handleAt(handles, press.at, press.isTouch ? 22 : 8);
  const under = itemAt(at, session.arrangement(), rawRoomOf(model), (reachOf(press) / model.view.k) * 0.6);
  // A handle's catching area must not cover the middle of the thing itself, or a small thing could not be slid.
  if (body && handle && chosen && !(under && isSame(under, chosen) && distance(handle.at, press.at) > 11)) {
    const item: Item = { kind: body.source, id: body.id };
    return { kind: 'pressed', press, item, start: () => handleDrag(model, body, handle, at) };
  }
  if (press.isMore && !under) return { kind: 'pressed', press, item: null, start: () => areaDrag(model, at) };
  return { kind: 'pressed', press, item: under, start: () => startDrag(model, under, at) };
}

function startDrag(model: PlanModel, item: Item | null, at: Point): Drag | null {
  if (!item) return null;
  const { session } = model;
  const set = itemsChosen(session);
  if (set.length > 1 && isInSet(set, item)) {
    const drags = setDragsHere();
    const drag = drags?.moveSetDrag(model, set, item, at) ?? null;
    if (!drag) session.announce(drags ? 'It is locked. Unlock it to move it.' : 'One moment, then slide them again.');
    return drag;
  }
  if (!isSame(session.view().chosen, item)) choose(session, item);
  const thing = thingOf(session, item);
  if (thing && isLocked(thing)) {
    session.announce('It is locked. Unlock it to move it.');
    return null;
  }
  const room = rawRoomOf(model);
  switch (item.kind) {
    case 'piece': {
      const piece = session.arrangement().pieces.find((p) => p.id === item.id);
      return piece ? movePieceDrag(model, piece, at) : null;
    }
    case 'fixture': {
      const fixture = room.fixtures.find((f) => f.id === item.id);
      return fixture ? moveFixtureDrag(model, fixture, at) : null;
    }
    case 'opening': {
      const opening = roomOf(model).openings.find((o) => o.id === item.id);
      return opening ? moveOpeningDrag(model, opening, at) : null;
    }
    case 'corner': {
      const corner = room.corners.find((c) => c.id === item.id);
      return corner ? moveCornerDrag(model, corner, at) : null;
    }
    case 'wall': {
      const wall = roomOf(model).walls.find((w) => w.corner === item.id);
      return wall ? moveWallDrag(model, wall, at) : null;
    }
  }
}
