import type { SceneBoard, SceneSide, SceneTray, ShelvesScene } from '../../scene/types.ts';
import type { Placement } from '../../schema/types.ts';
import type { OrderRelation } from './relation.ts';
import { type MustHold, Reshelving, type Shortage } from './reshelving.ts';
import { readWorkSide, standSize, type WorkBoard, type WorkShelves, type WorkTray, workShelves } from './workShelves.ts';

/** Where something is moved to. mm from the left end of the board. */
export interface NewPlace {
  readonly material: string;
  readonly side: SceneSide;
  readonly board: SceneBoard;
  readonly x: number;
  /** What stands left of it then, by id; null: nothing. */
  readonly behind: string | null;
}

/** Where the things that move go; everything else stays on its board, pushed along it where room is needed. */
export interface Mending {
  /** Positions of what moves. */
  readonly moves: readonly number[];
  readonly places: readonly NewPlace[];
  readonly shortages: readonly Shortage[];
  /** Every tray that then stands elsewhere, the pushed ones too. */
  readonly placements: readonly Placement[];
  /** Trays of a board then stand closer than the wanted gap. */
  readonly isSqueezed: boolean;
  /** Something goes where the smallest child does not take it from. */
  readonly isBeyondReach: boolean;
  /** Ids in reading order as it would be. */
  readAfter(): readonly string[];
}

/** Whether the smallest child takes a tray from a board with its left edge at x (mm). Not known counts as yes. */
export type IsInReach = (tray: SceneTray, side: SceneSide, board: SceneBoard, x: number) => boolean;

export interface InsertBy {
  /** mm to keep between trays */
  readonly gap: number;
  readonly isInReach: IsInReach;
}

/**
 * Moves the trays at these positions to where the order is right, each as near as can be to its own strand, and keeps the
 * rest. A tray goes where it fits without pushing, else where the board fits with its trays moved together, else closer
 * than the wanted gap; boards beyond the smallest child's reach come last; if no board has room, the one that is short by
 * least is named.
 */
export function insertAll(
  scene: ShelvesScene,
  relation: OrderRelation,
  moving: readonly number[],
  mustHold: MustHold,
  { gap, isInReach }: InsertBy,
): Mending {
  const isMoving = new Set(moving.map((position) => (relation.reading[position] as SceneTray).material.id));
  const shelves = workShelves(scene, gap, (tray) => isMoving.has(tray.material.id));
  const work = new Reshelving(relation, shelves, moving);
  const places: { material: string; board: WorkBoard; tray: WorkTray }[] = [];
  const shortages: Shortage[] = [];
  let [isSqueezed, isBeyondReach] = [false, false];
  for (const position of inTopologicalOrder(scene, relation, moving)) {
    const tray = relation.reading[position] as SceneTray;
    const size = standSize(tray.material, tray.placement.turned);
    const [least, most] = work.bounds(position, mustHold);
    const ideal = Math.min(most, Math.max(least, work.nextToItsStrand(position, tray.material.strand)));
    const slot = work.choose(
      size,
      { least, most, ideal },
      (choice) => work.holds(position, choice, size, mustHold),
      ({ board, x }) => isInReach(tray, board.side, board.board, x),
    );
    if (!slot) continue;
    isSqueezed ||= slot.pushGap !== null && slot.pushGap < gap - 1e-9;
    isBeyondReach ||= !isInReach(tray, slot.slot.board.side, slot.slot.board.board, slot.slot.x);
    if (slot.short) shortages.push({ ...slot.short, material: tray.material.id });
    const placed = work.put(position, tray, size, slot);
    places.push({ material: tray.material.id, board: slot.slot.board, tray: placed });
  }
  return {
    moves: moving,
    places: places.map(({ material, board: { side, board, trays }, tray }) => {
      return { material, side, board, x: tray.x, behind: trays[trays.indexOf(tray) - 1]?.id ?? null };
    }),
    shortages,
    placements: changedPlacements(shelves),
    isSqueezed,
    isBeyondReach,
    readAfter: () => shelves.sides.flatMap((side) => readWorkSide(side, shelves.direction)).map(({ id }) => id),
  };
}

function inTopologicalOrder(scene: ShelvesScene, relation: OrderRelation, moving: readonly number[]): number[] {
  const at = new Map<number, number>();
  relation.graph.topological.forEach((node, index) => {
    const material = scene.classroom.materials[node];
    const column = material && relation.columnOf.get(material.id);
    if (column !== undefined) at.set(column, index);
  });
  return [...moving].sort((p, q) => (at.get(p) ?? 0) - (at.get(q) ?? 0));
}

function changedPlacements(shelves: WorkShelves): Placement[] {
  const changed: Placement[] = [];
  for (const { boards } of shelves.sides)
    for (const { board, trays } of boards)
      for (const { x, placement } of trays) {
        if (!placement) continue;
        const before = board.trays.find((tray) => tray.material.id === placement.material);
        if (!before || before.placement.x !== x) changed.push({ ...placement, x });
      }
  return changed;
}
