import type { Session } from '#client/session/types.ts';
import type { Box } from '#model/geometry/polygon.ts';
import type { Point } from '#model/geometry/vec.ts';
import type { SceneBody, SceneRoom } from '#model/scene/types.ts';
import type { Room } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from './bodies.ts';
import type { TurnedBox } from './box.ts';
import type { NearDistance } from './nearDistances.ts';
import { neatlineBounds } from './neatline.ts';
import { type PlanStore, planStoreOf } from './planStore.ts';
import type { SnapLine, SnapScene } from './snap.ts';
import { fitRoom, keepInSight, type Margins, type Size, type Viewport } from './viewport.ts';

/** Each is a canvas of its own: while something is dragged only `over` is drawn again. */
export type LayerName = 'sheet' | 'marks' | 'things' | 'over';
export const layerNames: readonly LayerName[] = ['sheet', 'marks', 'things', 'over'];

/** What is under somebody's finger just now. */
export interface Moving {
  /** Left out of the resting things. */
  readonly ids: ReadonlySet<string>;
  readonly bodies: readonly SceneBody[];
  /** Where it stood. */
  readonly from: SceneBody | null;
  readonly lines: readonly SnapLine[];
  readonly distances: readonly NearDistance[];
}

/**
 * The drawing's state that never passes through React: where the paper lies, what moves.
 * One per mounted plan. px of the canvas, mm of the plan.
 */
export interface PlanModel {
  readonly session: Session;
  readonly store: PlanStore;
  view: Viewport;
  size: Size;
  /** A finger is on the screen: targets are larger. */
  isTouch: boolean;
  /** px; where the pointer hovers, for ghosts of new things */
  pointer: Point | null;
  moving: Moving | null;
  /** A room being changed by a drag, not yet written. */
  draftRoom: Room | null;
  redraw(...layers: LayerName[]): void;
}

export function createPlanModel(session: Session, redraw: PlanModel['redraw']): PlanModel {
  return {
    session,
    store: planStoreOf(session),
    view: { k: 0.06, x: 0, y: 0 },
    size: { width: 0, height: 0 },
    isTouch: false,
    pointer: null,
    moving: null,
    draftRoom: null,
    redraw,
  };
}

export const rawRoomOf = (model: PlanModel): Room => model.draftRoom ?? model.session.classroom().room;
export const roomOf = (model: PlanModel): SceneRoom => shapeOfRoom(rawRoomOf(model));
export const boundsOf = (model: PlanModel): Box => neatlineBounds(roomOf(model).outline);

export function bodyById(model: PlanModel, id: string): SceneBody | undefined {
  const piece = model.session.arrangement().pieces.find((p) => p.id === id);
  if (piece) return bodyOfPiece(piece);
  const fixture = model.session.classroom().room.fixtures.find((f) => f.id === id);
  return fixture && bodyOfFixture(fixture);
}

/** The room and all that stands in it but the given things, for snapping and measuring. */
export function surroundings(model: PlanModel, without: ReadonlySet<string>): SnapScene {
  const room = roomOf(model);
  const pieces = model.session.arrangement().pieces.filter((p) => p.kind !== 'rug' && !without.has(p.id));
  const fixtures = rawRoomOf(model).fixtures.filter((f) => !f.walkable && !without.has(f.id));
  const others: TurnedBox[] = [...pieces, ...fixtures];
  return { outline: room.outline, walls: room.walls, others };
}

/** px round the room for neatline, strings and door leaves; strings are left out where there is no space. */
export function marginsFor(size: Size): Margins {
  if (hasStrings(size)) return { top: 76, right: 62, bottom: 62, left: 76 };
  return { top: 36, right: 22, bottom: 34, left: 36 };
}

export const hasStrings = (size: Size): boolean => size.width >= 500 && size.height >= 420;

export function fitWholeRoom(model: PlanModel): void {
  model.view = fitRoom(boundsOf(model), model.size, marginsFor(model.size));
  if (model.store.state().isMoved) model.store.set({ isMoved: false });
  model.redraw(...layerNames);
}

export function moveView(model: PlanModel, view: Viewport): void {
  model.view = keepInSight(view, boundsOf(model), model.size);
  // It is no longer fitted by itself.
  if (!model.store.state().isMoved) model.store.set({ isMoved: true });
  model.redraw(...layerNames);
}
