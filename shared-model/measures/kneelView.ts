import type { SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';
import type { Classroom } from '../schema/types.ts';
import type { ChildModel } from './childModel.ts';
import type { Reach } from './reach.ts';
import { type LookRules, seenFrom, standOffAt, usualLook } from './reachCurves.ts';
import { type TraySpot, takeDepth } from './traySpot.ts';

/** A point before or in a shelf, mm: right of the side's left end, behind the shelf's front, above the floor. */
export interface ShelfPoint {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Where an eye is: `distance` before the front, `height` above the floor, `along` from the side's left end; mm. */
export interface Eye {
  readonly along: number;
  readonly distance: number;
  readonly height: number;
}

/**
 * Where a point behind the front is seen on the front's own plane (mm): central perspective with the shelf's front as
 * the picture, so that the front itself is true to scale and what stands behind it shrinks towards the eye.
 */
export function inPicture({ along, distance, height }: Eye, { x, y, z }: ShelfPoint): { x: number; z: number } {
  const shrink = y <= 0 ? 1 : distance / (distance + y);
  return { x: along + (x - along) * shrink, z: height + (z - height) * shrink };
}

/** How the spot where the hand would go looks from one distance. */
type Look = 'seen' | 'board above' | 'too flat' | 'above the eye' | 'no floor' | 'too near' | 'not known';

export interface TrayLook {
  readonly board: SceneBoard;
  readonly tray: SceneTray;
  readonly look: Look;
  /** The spot, judged from straight before it; null: the board's height is not known. */
  readonly spot: ShelfPoint | null;
  /** How far before the front she sees it from; null: from nowhere, or not known. */
  readonly from: { readonly nearest: number; readonly farthest: number } | null;
  /** Its top (mm above the floor) where that is as high as her eye or higher: nobody looks into it from there, however steep the line to its place. Null: lower, or not known. */
  readonly topOverEye: number | null;
  /** Free floor straight before it, mm. */
  readonly floor: number;
  /** A thing of the same board that stands between her eye and the spot. The check asks about boards only. */
  readonly before: SceneTray | null;
}

/** Whether she looks into a thing: its place is seen as the check asks, and its top is below her eye. */
export const seesInto = ({ look, topOverEye }: Pick<TrayLook, 'look' | 'topOverEye'>): boolean => look === 'seen' && topOverEye === null;

/** How the class may look, as the check of seeing is set. */
export function lookRulesOf(classroom: Pick<Classroom, 'options'>): LookRules {
  const own = classroom.options['reach/see'] ?? {};
  const number = (value: unknown, usual: number): number => (typeof value === 'number' && Number.isFinite(value) ? value : usual);
  return { angle: number(own.angle, usualLook.angle), stepBack: number(own.stepBack, usualLook.stepBack) };
}

/**
 * Every tray of a shelf side as a child sees it from `distance` mm before the front. She walks along the shelf: each is
 * judged from straight before it, as the check does, so the two never disagree.
 */
export function lookAtSide(reach: Reach, side: SceneSide, child: ChildModel, distance: number, rules: LookRules = usualLook): TrayLook[] {
  return side.boards.flatMap((board) => board.trays.map((tray) => lookAtTray(reach, side, board, tray, child, distance, rules)));
}

function lookAtTray(
  reach: Reach,
  side: SceneSide,
  board: SceneBoard,
  tray: SceneTray,
  child: ChildModel,
  distance: number,
  rules: LookRules,
): TrayLook {
  const spot = reach.spotOf(side, board, tray);
  const depth = takeDepth(spot, tray);
  const floor = spot.floor();
  const x = (side.width - board.width) / 2 + tray.placement.x + (tray.width ?? 0) / 2;
  const { surface } = spot;
  if (surface === null) return { board, tray, look: 'not known', spot: null, from: null, topOverEye: null, floor: floor.low, before: null };
  const at: ShelfPoint = { x, y: depth.low, z: surface };
  const near = lookAtSpot(child, spot, at, distance, floor.high, rules);
  const far = Number.isFinite(depth.high) ? lookAtSpot(child, spot, { ...at, y: depth.high }, distance, floor.low, rules) : null;
  const underside = spot.clear === null ? null : surface + spot.clear;
  const look = near === far ? near : near === 'seen' || far === 'seen' ? 'not known' : near;
  return {
    board,
    tray,
    look,
    spot: at,
    from: seenFrom(child, { surface, underside, depth: at.y, toeRecess: spot.toeRecess, floor: floor.low }, rules),
    topOverEye: tray.height !== null && surface + tray.height >= child.eye ? surface + tray.height : null,
    floor: floor.low,
    before: standsBefore(board, tray, { along: x, distance, height: child.eye }, at, (side.width - board.width) / 2),
  };
}

/** One spot from one distance, on the picture: below the edge of the board above, and not too flat. */
function lookAtSpot(child: ChildModel, spot: TraySpot, at: ShelfPoint, distance: number, floor: number, rules: LookRules): Look {
  const fall = child.eye - at.z;
  if (fall <= 0) return 'above the eye';
  if (distance < standOffAt(child, spot.toeRecess) - NOISE) return 'too near';
  if (distance > Math.min(floor, rules.stepBack) + NOISE) return 'no floor';
  const eye: Eye = { along: at.x, distance, height: child.eye };
  if (spot.clear !== null && (spot.clear <= 0 || inPicture(eye, at).z > at.z + spot.clear + NOISE)) return 'board above';
  const angle = (Math.atan2(fall, distance + at.y) * 180) / Math.PI;
  return angle < rules.angle - NOISE ? 'too flat' : 'seen';
}

/** mm, degrees: rounding where a limit is just met */
const NOISE = 1e-6;
/** mm: a thing of unknown height hides nothing for certain. */
const TOUCH = 1;

/** The thing that the line from the eye to a spot passes through first; null: none. */
function standsBefore(board: SceneBoard, own: SceneTray, eye: Eye, spot: ShelfPoint, left: number): SceneTray | null {
  const others = board.trays.filter((tray) => tray !== own && tray.width !== null && tray.depth !== null && tray.height !== null);
  const hits = others.flatMap((tray) => {
    const x0 = left + tray.placement.x;
    const y0 = board.setBack + tray.placement.y;
    const box = {
      x: [x0 + TOUCH, x0 + (tray.width ?? 0) - TOUCH],
      y: [y0 + TOUCH, Math.min(spot.y - TOUCH, y0 + (tray.depth ?? 0) - TOUCH)],
      z: [spot.z, spot.z + (tray.height ?? 0) - TOUCH],
    } as const;
    const enters = whereEnters(eye, spot, box);
    return enters === null ? [] : [{ tray, enters }];
  });
  return hits.sort((p, q) => p.enters - q.enters)[0]?.tray ?? null;
}

type Range = readonly [number, number];

/** Share of the line from the eye to a point at which it enters a box; null: it misses. */
function whereEnters(eye: Eye, to: ShelfPoint, box: { readonly x: Range; readonly y: Range; readonly z: Range }): number | null {
  let [from, until] = [0, 1];
  for (const [a, b, [low, high]] of [
    [eye.along, to.x, box.x],
    [-eye.distance, to.y, box.y],
    [eye.height, to.z, box.z],
  ] as const) {
    const run = b - a;
    if (Math.abs(run) < 1e-9) {
      if (a < low || a > high) return null;
      continue;
    }
    const [p, q] = [(low - a) / run, (high - a) / run];
    from = Math.max(from, Math.min(p, q));
    until = Math.min(until, Math.max(p, q));
  }
  return from < until ? from : null;
}
