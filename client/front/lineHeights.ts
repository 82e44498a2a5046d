import { measureReach, type Reach } from '#model/measures/reach.ts';
import { WIDE_TAKE_DEPTH } from '#model/measures/reachCurves.ts';
import { reachLines } from '#model/measures/reachLines.ts';
import { takeDepth } from '#model/measures/traySpot.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { advisoryReach } from '#model/standards/advisoryReach.ts';
import type { FrontBoard, FrontLayout } from './frontLayout.ts';
import type { LineHeights } from './frontLines.ts';

/** Heights of the smallest child for the boards of a front; null: the age of the youngest is not known. */
export function lineHeights(scene: Scene, side: SceneSide, layout: FrontLayout): LineHeights | null {
  const reach: Reach = measureReach(scene);
  if (!reach.smallest) return null;
  const boards = layout.boards.filter((board) => board.level !== null || board.trays.length > 0);
  return {
    eye: reach.smallest.eye,
    child: reach.smallest,
    boards: boards.flatMap((board) => {
      const lines = reachLines(reach, side, handDepth(board));
      return lines ? [{ name: board.name, atDepth: lines.depth, take: lines.take, see: lines.see }] : [];
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

/** The band that serves all ages enrolled: lowest high, highest low. */
function advisoryFor(scene: Scene): LineHeights['advisory'] {
  const bands = advisoryReach.filter((band) =>
    scene.classroom.children.groups.some(
      (group) => group.count > 0 && group.fromMonths < band.toMonths && group.toMonths > band.fromMonths,
    ),
  );
  if (bands.length === 0) return null;
  return { high: Math.min(...bands.map((band) => band.high)), low: Math.max(...bands.map((band) => band.low)) };
}
