import type { SceneBoard, SceneSide, SceneTray, ShelvesScene } from '../../scene/types.ts';
import type { Material, Placement } from '../../schema/types.ts';
import { inReadingOrder, type ReadingDirection, type ReadTray } from './reading.ts';

/** mm: a tray whose width is not known is given the room of a small one (an estimate of ours). */
const ASSUMED_WIDTH = 300;

/** A tray that can be moved while a fix is worked out. mm. */
export interface WorkTray extends ReadTray {
  readonly id: string;
  x: number;
  readonly width: number;
  readonly placement: Placement | null;
}

/** A board on which trays can be tried. */
export interface WorkBoard {
  readonly side: SceneSide;
  readonly board: SceneBoard;
  /** counted from the top */
  readonly index: number;
  /** by x */
  trays: WorkTray[];
}

/** The children's shelves as they would be while trays are tried: sides in walk order, boards from the top. */
export interface WorkShelves {
  readonly sides: readonly { readonly side: SceneSide; readonly boards: readonly WorkBoard[] }[];
  readonly direction: ReadingDirection;
  /** mm to keep between trays */
  readonly gap: number;
}

/** The children's shelves without some of their trays. */
export function workShelves(scene: ShelvesScene, gap: number, without: (tray: SceneTray) => boolean): WorkShelves {
  const sides = scene.sides
    .filter((side) => side.isForChildren)
    .map((side) => ({
      side,
      boards: side.boards.map((board, index): WorkBoard => {
        const trays = board.trays.filter((tray) => !without(tray)).map((tray) => workTray(tray, index));
        return { side, board, index, trays };
      }),
    }));
  return { sides, direction: scene.classroom.display.readingDirection, gap };
}

const workTray = (tray: SceneTray, board: number): WorkTray => ({
  id: tray.material.id,
  x: tray.placement.x,
  width: tray.width ?? ASSUMED_WIDTH,
  board,
  placement: tray.placement,
});

/** Ids in reading order as the shelves now are. */
export function readWorkSide({ side, boards }: WorkShelves['sides'][number], direction: ReadingDirection, extra?: WorkTray): WorkTray[] {
  const trays = boards.flatMap((board) => board.trays);
  return inReadingOrder(extra ? [...trays, extra] : trays, side.piece.reading, direction);
}

/** Size of a material as it would stand: mm, unknown width assumed, other unknowns null. */
export interface StandSize {
  readonly width: number;
  readonly depth: number | null;
  readonly height: number | null;
}

export function standSize(material: Material, turned: boolean): StandSize {
  const width = turned ? material.depth : material.width;
  return { width: width ?? ASSUMED_WIDTH, depth: turned ? material.width : material.depth, height: material.height };
}

/** mm by which a thing is too deep or too high for a board; 0: neither, as far as is known. */
export function tooDeepBy(size: StandSize, board: SceneBoard): number {
  return size.depth === null ? 0 : Math.max(0, size.depth - board.depth);
}
export function tooTallBy(size: StandSize, board: SceneBoard): number {
  return size.height === null || board.clear === null ? 0 : Math.max(0, size.height - board.clear);
}
