import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';
import { sayLength } from '../units/sayLength.ts';
import type { Edit, Fix } from './edit.ts';
import { sayThings } from './sayBoard.ts';

/** mm between trays that a moved tray keeps if it can. */
const TRAY_GAP = 50;
/** mm: boards are lowered to whole steps of this. */
const BOARD_STEP = 10;

/** Where a tray would stand after a mend; mm, as in a placement and a board. */
export interface MendedSpot {
  readonly side: SceneSide;
  readonly board: SceneBoard;
  /** of the board after the mend */
  readonly surface: number;
  readonly clear: number | null;
  readonly x: number;
  readonly y: number;
}
/** Says whether a tray is fine on a spot, by every check that the mend must not break. */
export type IsFine = (tray: SceneTray, spot: MendedSpot) => boolean;

/**
 * The smallest mend that puts every tray of `wrong` on a spot where it is fine: pull them forward, or lower their
 * board, or move them to lower boards of the same side with room. Null: none of these does it.
 */
export function mendBoard(scene: Scene, side: SceneSide, board: SceneBoard, wrong: readonly SceneTray[], isFine: IsFine): Fix | null {
  return pullForward(side, board, wrong, isFine) ?? lowerBoard(scene, board, isFine) ?? moveDown(side, board, wrong, isFine);
}

const nameAll = (trays: readonly SceneTray[]): string => sayThings(trays.map((tray) => tray.material.name));

function pullForward(side: SceneSide, board: SceneBoard, wrong: readonly SceneTray[], isFine: IsFine): Fix | null {
  const { surface, clear } = board;
  if (surface === null) return null;
  const forward = wrong.map((tray) => ({ tray, x: tray.placement.x, y: 0 }));
  if (forward.some(({ tray, x, y }) => tray.placement.y <= 0 || !isFine(tray, { side, board, surface, clear, x, y }))) return null;
  // Something smaller may stand before it.
  const moved = new Map(forward.map(({ tray, y }) => [tray, y]));
  if (forward.some(({ tray }) => board.trays.some((other) => other !== tray && mayOverlap(tray, other, moved)))) return null;
  return {
    label: `Do it: ${nameAll(wrong)} to the front edge`,
    edits: forward.map(({ tray, y }) => ({ do: 'place', placement: { ...tray.placement, y } })),
  };
}

/** Whether two trays of a board may lie over one another once `moved` are pulled forward; unknown sizes may. */
function mayOverlap(tray: SceneTray, other: SceneTray, moved: ReadonlyMap<SceneTray, number>): boolean {
  if (tray.width === null || tray.depth === null || other.width === null || other.depth === null) return true;
  const [y, otherY] = [moved.get(tray) ?? tray.placement.y, moved.get(other) ?? other.placement.y];
  const isBeside = tray.placement.x + tray.width <= other.placement.x || other.placement.x + other.width <= tray.placement.x;
  return !isBeside && y < otherY + other.depth && otherY < y + tray.depth;
}

/** The board and what shares it on other sides of the piece come down together, as far as what stands below allows. */
function lowerBoard(scene: Scene, board: SceneBoard, isFine: IsFine): Fix | null {
  const { level, surface, piece } = board;
  if (level === null || surface === null || piece.height === null || surface >= piece.height - 1) return null;
  // What was put on the top without naming a board would end up on the bare top.
  if (scene.arrangement.placements.some((p) => p.piece === piece.id && p.level === null)) return null;
  const onPiece = scene.sides.filter((s) => s.piece === piece);
  const next = piece.levels.filter((l) => l.surface < surface).sort((p, q) => q.surface - p.surface)[0];
  const least = next ? next.surface + piece.panel + 1 : 0;
  for (let to = Math.ceil(surface / BOARD_STEP - 1) * BOARD_STEP; to >= least; to -= BOARD_STEP) {
    const room = next ? to - piece.panel - next.surface : 0;
    const belowClear = next?.clear == null ? room : Math.min(next.clear, room);
    const holds = onPiece.every((s) =>
      s.boards.every((b) => {
        if (b.level?.id === level.id) {
          const clear = b.clear === null || level.clear !== null ? b.clear : b.clear + surface - to;
          return b.trays.every((tray) => isFine(tray, { side: s, board: b, surface: to, clear, x: tray.placement.x, y: tray.placement.y }));
        }
        if (!next || b.level?.id !== next.id) return true;
        return b.trays.every(
          (tray) =>
            tray.height !== null &&
            tray.height <= belowClear &&
            isFine(tray, { side: s, board: b, surface: next.surface, clear: belowClear, x: tray.placement.x, y: tray.placement.y }),
        );
      }),
    );
    if (!holds) continue;
    const edits: Edit[] = [{ do: 'change-level', piece: piece.id, level: level.id, set: { surface: to } }];
    if (next && next.clear !== null && next.clear > room)
      edits.push({ do: 'change-level', piece: piece.id, level: next.id, set: { clear: room } });
    return { label: `Do it: the board of ${nameAll(board.trays)} down to ${sayLength(to, scene.classroom.display.units)}`, edits };
  }
  return null;
}

/** Each wrong tray to the nearest lower board of its side with room, gap by gap from the left. */
function moveDown(side: SceneSide, board: SceneBoard, wrong: readonly SceneTray[], isFine: IsFine): Fix | null {
  const { surface } = board;
  if (surface === null) return null;
  const lower = side.boards.filter((b) => b.surface !== null && b.surface < surface);
  for (const gap of [TRAY_GAP, 0]) {
    const taken = new Map(lower.map((b) => [b, takenOn(b)]));
    const edits = wrong.map((tray) => placeOn(side, lower, taken, tray, gap, isFine));
    const done = edits.filter((edit) => edit !== null);
    if (done.length === wrong.length) return { label: `Do it: ${nameAll(wrong)} to a lower board`, edits: done };
  }
  return null;
}

interface Taken {
  readonly from: number;
  readonly to: number;
}
/** Stretches of a board that are taken, left to right; null: a tray of unknown width stands there. */
function takenOn(board: SceneBoard): Taken[] | null {
  const all: Taken[] = [];
  for (const { placement, width } of board.trays) {
    if (width === null) return null;
    all.push({ from: placement.x, to: placement.x + width });
  }
  return all;
}

function placeOn(
  side: SceneSide,
  lower: readonly SceneBoard[],
  taken: ReadonlyMap<SceneBoard, Taken[] | null>,
  tray: SceneTray,
  gap: number,
  isFine: IsFine,
): Edit | null {
  const { width, depth, height } = tray;
  if (width === null || depth === null || height === null) return null;
  for (const board of lower) {
    const stretches = taken.get(board);
    const { surface, clear } = board;
    if (!stretches || surface === null || depth > board.depth || (clear !== null && height > clear)) continue;
    const x = firstGap(stretches, board.width, width, gap);
    if (x === null || !isFine(tray, { side, board, surface, clear, x, y: 0 })) continue;
    stretches.push({ from: x, to: x + width });
    stretches.sort((p, q) => p.from - q.from);
    return {
      do: 'place',
      placement: { ...tray.placement, piece: side.piece.id, side: side.side, level: board.level?.id ?? null, x, y: 0 },
    };
  }
  return null;
}

/** Left end of the first free stretch that holds `width` with `gap` to its neighbours; null: none. */
function firstGap(stretches: readonly Taken[], boardWidth: number, width: number, gap: number): number | null {
  let from = 0;
  for (const stretch of [...stretches, { from: boardWidth + gap, to: boardWidth }].sort((p, q) => p.from - q.from)) {
    if (stretch.from - gap - from >= width) return from;
    from = Math.max(from, stretch.to + gap);
  }
  return null;
}
