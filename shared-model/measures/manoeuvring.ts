import { takenBefore } from '../geometry/frontBand.ts';
import { type FrontLine, lengthOf } from '../geometry/frontLine.ts';
import { boundingBox } from '../geometry/polygon.ts';
import { cross, sub } from '../geometry/vec.ts';
import type { Scene, SceneOpening } from '../scene/types.ts';
import { type ManoeuvringSpace, manoeuvringSpaces } from '../standards/accessibleRoutes.ts';
import { leastThatMeets } from '../units/compare.ts';
import { doorLine } from './targets.ts';
import { WaysField } from './waysField.ts';

/** mm: no space reaches further beside a door or out from it */
const FARTHEST = 1600;
/** Inches to the mm that the table prints where they are less: 60, 54, 48, 42, 36, 24, 22 and 18 in. */
const exactInches: ReadonlyMap<number, number> = new Map([
  [1525, 1524],
  [1370, 1371.6],
  [1220, 1219.2],
  [1065, 1066.8],
  [915, 914.4],
  [610, 609.6],
  [560, 558.8],
  [455, 457.2],
]);

/** One line of the table as it lies before a door, with what stands in it. */
interface SpaceBefore {
  readonly space: ManoeuvringSpace;
  /** mm along the wall */
  readonly width: number;
  /** mm free before the door, at most the space's depth */
  readonly clearDepth: number;
  /** Ids of what stands in it, the nearest to the door first. */
  readonly taken: readonly string[];
}

export interface DoorFloor {
  readonly opening: SceneOpening;
  readonly side: 'pull' | 'push';
  /** Those of the door's side in the order of the table; the first is that of a front approach. */
  readonly spaces: readonly SpaceBefore[];
}

/**
 * The floor inside the room that a wheelchair needs to open each hinged door by hand, closers left out. Exact.
 * Children sit at the tables. Null where the walls do not hold.
 */
export function measureDoorFloors(scene: Scene): DoorFloor[] | null {
  if (!scene.room.isSound) return null;
  const field = WaysField.of(scene);
  return hingedDoors(scene).map((opening) => {
    const side = opening.raw.swing.startsWith('in-') ? 'pull' : 'push';
    const spaces = manoeuvringSpaces.filter((space) => space.side === side).map((space) => lookAt(field, opening, space));
    return { opening, side, spaces };
  });
}

export const hingedDoors = ({ room }: Scene): SceneOpening[] =>
  room.openings.filter(({ raw }) => raw.kind === 'door' && /^(in|out)-/.test(raw.swing));

function lookAt(field: WaysField, opening: SceneOpening, space: ManoeuvringSpace): SpaceBefore {
  const line: FrontLine = doorLine(opening);
  const length = lengthOf(line);
  const beside = (mm = 0): number => least(mm);
  // Along the wall's direction the latch lies at the far jamb where the leaf hangs at the near one.
  const [before, after] = isHungAtStart(opening) ? [space.besideHinge, space.besideLatch] : [space.besideLatch, space.besideHinge];
  const from = -beside(before);
  const to = length + beside(after);
  const depth = least(space.depth);
  const near = field.grid.near(boundingBox([line.a, line.b]), FARTHEST).flatMap((index) => field.parts[index] ?? []);
  const taken = takenBefore(line, near, 0, depth)
    .filter((one) => one.from < to - 0.01 && one.to > from + 0.01)
    .sort((p, q) => p.nearest - q.nearest);
  return {
    space,
    width: to - from,
    clearDepth: Math.min(depth, taken[0]?.nearest ?? depth),
    taken: [...new Set(taken.map(({ id }) => id))],
  };
}

const least = (mm: number): number => Math.min(mm, exactInches.get(mm) ?? mm, leastThatMeets(mm, true));

/** True when the leaf hangs at the jamb where the wall begins: the left one seen from inside where corners run clockwise. */
function isHungAtStart({ raw, wall }: SceneOpening): boolean {
  const runsClockwise = cross(sub(wall.b, wall.a), wall.inward) > 0;
  return raw.swing.endsWith('left') === runsClockwise;
}
