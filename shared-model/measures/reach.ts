import type { Scene, SceneBoard, SceneSide, SceneTray } from '../scene/types.ts';
import type { Material } from '../schema/types.ts';
import { type ChildModel, childModel, GROWTH_MONTHS } from './childModel.ts';
import { freeFloorBefore, type Obstacle, obstaclesOf } from './frontFloor.ts';
import { FARTHEST_LOOK } from './reachCurves.ts';
import { alongSide, type Between, type TraySpot } from './traySpot.ts';

/** A place that a tray might be given; mm, as in a placement and a board. */
interface SpotAt {
  readonly surface: number;
  readonly clear: number | null;
  readonly x: number;
  readonly y: number;
}

/** The children of a class as reach sees them. */
export interface Reach {
  /** The smallest child the room must still fit; null: not known, see `missing`. */
  readonly smallest: ChildModel | null;
  /** What to enter so that the smallest child is known. */
  readonly missing: readonly string[];
  /** The youngest child meant to use a thing: the youngest enrolled, or older where the thing is for older ones. */
  meantFor(material: Pick<Material, 'fromMonths'>): ChildModel | null;
  /** Where a tray stands on its board, or would at `at`, with the free floor before it. */
  spotOf(side: SceneSide, board: SceneBoard, tray: SceneTray, at?: SpotAt): TraySpot;
}

export function measureReach(scene: Scene): Reach {
  const { groups, percentile, smallestStature } = scene.classroom.children;
  const enrolled = groups.filter((group) => group.count > 0);
  const youngest = enrolled.length === 0 ? null : Math.min(...enrolled.map((group) => group.fromMonths));
  const byMonths = new Map<number, ChildModel | null>();
  const childAt = (months: number): ChildModel | null => {
    const kept = byMonths.get(months);
    if (kept !== undefined) return kept;
    const child = childModel({ months, percentile, measuredStature: smallestStature });
    byMonths.set(months, child);
    return child;
  };
  const smallest = youngest === null ? null : childAt(youngest);
  let obstacles: Obstacle[] | null = null;
  const floors = new Map<SceneSide, (along: number) => number>();
  const floorBefore = (side: SceneSide, along: number): Between => {
    if (!scene.room.isSound) return { low: 0, high: FARTHEST_LOOK };
    obstacles ??= obstaclesOf(scene);
    const kept = floors.get(side) ?? freeFloorBefore(scene, obstacles, side, FARTHEST_LOOK);
    floors.set(side, kept);
    const floor = kept(along);
    return { low: floor, high: floor };
  };
  return {
    smallest,
    missing: smallest ? [] : [youngest === null ? 'give the ages of the children' : tooYoung(youngest)],
    meantFor: ({ fromMonths }) => (youngest === null ? null : childAt(Math.max(youngest, fromMonths ?? 0))),
    spotOf: (side, board, tray, at) => ({
      surface: at ? at.surface : board.surface,
      clear: at ? at.clear : board.clear,
      setBack: board.setBack,
      toeRecess: side.piece.toeRecess,
      y: at ? at.y : tray.placement.y,
      floor: () => floorBefore(side, alongSide(side, board.width, at ? at.x : tray.placement.x, tray.width)),
    }),
  };
}

const tooYoung = (months: number): string =>
  `measure the reach of the youngest child yourselves: no table covers ${months} months, only ${GROWTH_MONTHS.from} and older`;

/** A board of a children's shelf with at least one tray. */
export interface HeldBoard {
  readonly side: SceneSide;
  readonly board: SceneBoard;
}

/** Every board of a children's shelf that holds something, in the order of the class's walk, top first. */
export function boardsForChildren(scene: Scene): HeldBoard[] {
  return scene.sides
    .filter((side) => side.isForChildren)
    .flatMap((side) => side.boards.filter((board) => board.trays.length > 0).map((board) => ({ side, board })));
}

/** What to measure so that trays on a board can be judged; empty when all is known. The height counts for taking only. */
export function missingOf(side: SceneSide, board: SceneBoard, trays: readonly SceneTray[], isForTaking: boolean): string[] {
  const sizes = trays.flatMap(({ material }) => {
    const unknown = [
      material.width === null ? 'width' : '',
      material.depth === null ? 'depth' : '',
      isForTaking && material.height === null && material.grip === null ? 'height' : '',
    ].filter((word) => word !== '');
    return unknown.length === 0 ? [] : [`give ${material.name} its ${unknown.join(' and ')}`];
  });
  return board.surface === null ? [`give ${side.body.label} its height`, ...sizes] : sizes;
}
