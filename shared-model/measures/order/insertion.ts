import type { Scene, SceneBoard, SceneSide, SceneTray } from '../../scene/types.ts';
import type { Placement } from '../../schema/types.ts';
import type { OrderRelation } from './relation.ts';
import { type MustHold, Reshelving, type Shortage } from './reshelving.ts';
import { standSize, type WorkBoard, type WorkShelves, type WorkTray, workShelves } from './workShelves.ts';

/** Where something is moved to. mm from the left end of the board. */
interface NewPlace {
  readonly material: string;
  readonly board: WorkBoard;
  readonly x: number;
}

/** Where the things that move go; everything else stays on its board, pushed along it where room is needed. */
export interface Mending {
  readonly places: readonly NewPlace[];
  readonly shortages: readonly Shortage[];
  /** Every tray that then stands elsewhere, the pushed ones too. */
  readonly placements: readonly Placement[];
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
  scene: Scene,
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
    if (slot.short) shortages.push({ ...slot.short, material: tray.material.id });
    const placed = work.put(position, tray, size, slot);
    places.push({ material: tray.material.id, board: slot.slot.board, tray: placed });
  }
  return {
    places: places.map(({ material, board, tray }) => ({ material, board, x: tray.x })),
    shortages,
    placements: changedPlacements(shelves),
  };
}

function inTopologicalOrder(scene: Scene, relation: OrderRelation, moving: readonly number[]): number[] {
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
