import type { SceneBoard, SceneSide } from '../scene/types.ts';
import type { ChildModel } from './childModel.ts';
import type { Reach } from './reach.ts';
import { FARTHEST_LOOK, GRIP_ABOVE_BASE, seeLine, seenFrom, standOffAt, takeLimit } from './reachCurves.ts';

/** Lines of a shelf front, mm above the floor, at one depth behind the shelf's front. */
export interface ReachLines {
  readonly child: ChildModel;
  /** mm behind the front that take and see hold for */
  readonly depth: number;
  /** Highest surface for taking a thing gripped 50 above it; null: her arm ends before that depth. */
  readonly take: number | null;
  readonly eye: number;
  /** Highest open surface that she sees into, standing at the shelf. */
  readonly see: number;
}

/**
 * The lines that the drawing of a shelf side shows for the smallest child. The lines fall with the depth: ask for the
 * depth of what is chosen, or leave it out for the middle of the deepest board.
 * @returns null when the smallest child is not known (`reach.missing` says what to enter).
 */
export function reachLines(reach: Reach, side: SceneSide, depth = middleOf(side)): ReachLines | null {
  const child = reach.smallest;
  if (!child) return null;
  const { toeRecess } = side.piece;
  return {
    child,
    depth,
    take: takeLimit(child, depth, GRIP_ABOVE_BASE, toeRecess),
    eye: child.eye,
    see: seeLine(child, depth, standOffAt(child, toeRecess)),
  };
}

/** The take line as a curve, one point each `step` mm of depth from the front to where her arm ends. */
export function takeCurve(reach: Reach, side: SceneSide, step = 10): { depth: number; take: number }[] {
  const points: { depth: number; take: number }[] = [];
  if (!reach.smallest || !(step > 0)) return points;
  for (let depth = 0; ; depth += step) {
    const take = takeLimit(reach.smallest, depth, GRIP_ABOVE_BASE, side.piece.toeRecess);
    if (take === null) return points;
    points.push({ depth, take });
  }
}

/**
 * Where her eye has to be to see a spot of a board, mm before the front, given the board above and the free floor
 * there; null: from nowhere, or the board's height or the child is not known.
 */
export function sightOf(reach: Reach, side: SceneSide, board: SceneBoard, depth: number, floor = FARTHEST_LOOK) {
  if (!reach.smallest || board.surface === null) return null;
  const underside = board.clear === null ? null : board.surface + board.clear;
  return seenFrom(reach.smallest, { surface: board.surface, underside, depth, toeRecess: side.piece.toeRecess, floor });
}

function middleOf(side: SceneSide): number {
  const { piece } = side;
  const through = side.side === 'left' || side.side === 'right' ? piece.width : piece.depth;
  return side.boards.length === 0 ? through / 2 : Math.max(...side.boards.map((board) => board.setBack + board.depth / 2));
}
