import { measureReach } from '#model/measures/reach.ts';
import { seeLine, standOffAt, takeLimit, WIDE_TAKE_DEPTH } from '#model/measures/reachCurves.ts';
import { takeDepth } from '#model/measures/traySpot.ts';
import type { Scene } from '#model/scene/types.ts';
import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import type { LineHeights } from './frontLines.ts';

/** Advisory reach bands of the 2010 ADA Standards, advisory 308.1 (A15): from months, highest and lowest (mm). */
const ADVISORY = [
  { from: 36, to: 60, high: 915, low: 510 },
  { from: 60, to: 108, high: 1015, low: 455 },
  { from: 108, to: 156, high: 1120, low: 405 },
] as const;

/** Heights of the smallest child for the boards of a front; null: no group says how old the youngest is. */
export function lineHeights(scene: Scene, layout: FrontLayout): LineHeights | null {
  const child = measureReach(scene).smallest;
  if (!child) return null;
  const { toeRecess } = layout.piece;
  return {
    eye: child.eye,
    boards: layout.boards
      .filter((board) => board.level !== null || board.trays.length > 0)
      .map((board) => {
        const atDepth = handDepth(board);
        return {
          atDepth,
          take: takeLimit(child, atDepth, undefined, toeRecess),
          see: seeLine(child, atDepth, standOffAt(child, toeRecess)),
        };
      }),
    advisory: scene.classroom.access.wheelchair ? advisoryFor(scene) : null,
  };
}

/** How far behind the shelf's front the deepest hand goes on a board (mm); on a bare board, where a wide tray would be taken. */
function handDepth(board: FrontBoard): number {
  const depths = board.trays
    .map(({ tray }) => takeDepth({ setBack: board.setBack, y: tray.placement.y }, tray))
    .map(({ low, high }) => (Number.isFinite(high) ? high : low));
  return depths.length > 0 ? Math.max(...depths) : board.setBack + Math.min(board.depth / 2, WIDE_TAKE_DEPTH);
}

function advisoryFor(scene: Scene): { high: number; low: number } | null {
  const bands = ADVISORY.filter((band) =>
    scene.classroom.children.groups.some((group) => group.count > 0 && group.fromMonths < band.to && group.toMonths > band.from),
  );
  if (bands.length === 0) return null;
  return { high: Math.min(...bands.map((band) => band.high)), low: Math.max(...bands.map((band) => band.low)) };
}
