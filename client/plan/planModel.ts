import type { Session } from '#client/session/types.ts';
import type { Box } from '#model/geometry/polygon.ts';
import type { Point, Segment } from '#model/geometry/vec.ts';
import type { SceneBody, SceneRoom } from '#model/scene/types.ts';
import type { Picture } from '#model/schema/picture.ts';
import type { Room } from '#model/schema/types.ts';
import { bodyOfFixture, bodyOfPiece, shapeOfRoom } from './bodies.ts';
import type { TurnedBox } from './box.ts';
import type { NearDistance } from './nearDistances.ts';
import { neatlineBounds } from './neatline.ts';
import { type PlanStore, planStoreOf } from './planStore.ts';
import type { SnapLine, SnapScene } from './snap.ts';
import { fitRoom, keepInSight, type Margins, type Size, type Viewport } from './viewport.ts';

/** Each is a canvas of its own: while something is dragged only `over` is drawn again, and what the checks say when they say it. */
export type LayerName = 'sheet' | 'marks' | 'things' | 'checks' | 'over';
export const layerNames: readonly LayerName[] = ['sheet', 'marks', 'things', 'checks', 'over'];

/** What is under somebody's finger just now. */
interface Moving {
  /** Left out of the resting things. */
  readonly ids: ReadonlySet<string>;
  readonly bodies: readonly SceneBody[];
  /** Where they stood. */
  readonly from: readonly SceneBody[];
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
  /** The area drawn round several things, mm. */
  area: Segment | null;
  /** The picture being slid, not yet written. */
  draftPicture: Picture | null;
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
    area: null,
    draftPicture: null,
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

/**
 * The room and all that stands in it but the given things, for snapping and measuring.
 * Rugs and a table's own seats draw nothing to them: they are moved out of the way, not lined up with.
 */
export function surroundings(model: PlanModel, without: ReadonlySet<string>): SnapScene {
  const room = roomOf(model);
  const pieces = model.session.arrangement().pieces.filter((p) => p.kind !== 'rug' && p.table === null && !without.has(p.id));
  const fixtures = rawRoomOf(model).fixtures.filter((f) => !f.walkable && !without.has(f.id));
  const others: TurnedBox[] = [...pieces, ...fixtures];
  return { outline: room.outline, walls: room.walls, others };
}

/** px round the room for neatline, strings and names of doors; strings are left out where there is no space. */
function marginsFor(model: PlanModel): Margins {
  const { size } = model;
  const bounds = boundsOf(model);
  const named = roomOf(model).openings.filter((opening) => opening.raw.name);
  const hasName = (side: 'minX' | 'maxX'): boolean =>
    named.some(({ a, b }) => Math.abs(a.x - bounds[side]) < 1 && Math.abs(b.x - bounds[side]) < 1);
  // A leaf that swings out over the edge is seen whole.
  const k = Math.min(size.width / (bounds.maxX - bounds.minX), size.height / (bounds.maxY - bounds.minY));
  const leaves = (axis: 'x' | 'y', side: 'maxX' | 'maxY'): number[] =>
    roomOf(model)
      .openings.filter(({ a, b, raw }) => raw.swing.startsWith('out-') && a[axis] > bounds[side] - 100 && b[axis] > bounds[side] - 100)
      .map(({ raw }) => 16 + raw.width * k);
  if (hasStrings(size))
    return {
      top: 70,
      right: Math.max(hasName('maxX') ? 72 : 54, ...leaves('x', 'maxX')),
      bottom: Math.max(48, ...leaves('y', 'maxY')),
      left: hasName('minX') ? 90 : 72,
    };
  return { top: 36, right: hasName('maxX') ? 46 : 18, bottom: 36, left: hasName('minX') ? 64 : 36 };
}

export const hasStrings = (size: Size): boolean => size.width >= 480 && size.height >= 380;

export function fitWholeRoom(model: PlanModel): void {
  model.view = fitRoom(boundsOf(model), model.size, marginsFor(model));
  if (model.store.state().isMoved) model.store.set({ isMoved: false });
  model.redraw(...layerNames);
}

export function moveView(model: PlanModel, view: Viewport): void {
  model.view = keepInSight(view, boundsOf(model), model.size);
  // It is no longer fitted by itself.
  if (!model.store.state().isMoved) model.store.set({ isMoved: true });
  model.redraw(...layerNames);
}
