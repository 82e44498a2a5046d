import { coveredArea } from '../geometry/coverage.ts';
import type { Scene } from '../scene/types.ts';
import type { Zone } from '../schema/types.ts';
import { egress, widthEngland, widthIbc } from '../standards/egress.ts';

/** Net floor leaves out corridors, toilets and closets; furniture stays in (B01). */
const notNet: ReadonlySet<Zone['kind']> = new Set<Zone['kind']>(['passage', 'toilet', 'storage']);
/** m² */
const SQUARE_FOOT = 0.3048 ** 2;
/** Months: a room with a younger child is taken as day care. */
const DAY_CARE_BELOW = 30;

/** Who has to get out of a room. */
interface Persons {
  /** The larger of the two below. */
  readonly count: number;
  /** Children and adults entered. */
  readonly entered: number;
  /** Persons that the code reckons by floor, rounded up; null: it does not. */
  readonly byArea: number | null;
}

/** What the chosen rules ask of the ways out. mm, persons. */
export interface ExitFigures {
  readonly name: string;
  readonly persons: Persons;
  /** Clear width of a way out that may have to take everybody. */
  readonly wayWidth: number;
  /** Clear width of each of so many doors; in one code they share the persons. */
  readonly doorWidth: (exits: number) => number;
  /** How many exits so many persons need. */
  readonly exitsNeeded: number;
  /** Longest walk to an exit: where there is one, and where there are several. */
  readonly walk: { readonly one: number; readonly several: number };
  /** Doors swing outward from so many persons on. */
  readonly outwardFrom: number;
  /** Keys into standards. */
  readonly sources: {
    readonly width: readonly string[];
    readonly doors: readonly string[];
    readonly walk: readonly string[];
    readonly swing: readonly string[];
  };
}

/** Null: the class has not chosen whose rules count for the ways out. */
export function exitFigures(scene: Scene): ExitFigures | null {
  const { exitRules, sprinklered } = scene.classroom;
  switch (exitRules) {
    case 'us-ibc': {
      const { squareFeetPerPerson, oneWayOut, outwardFrom, walk, widthPerPerson, doorClear } = egress.ibc;
      const area = netArea(scene);
      const isDayCare = scene.classroom.children.groups.some((group) => group.count > 0 && group.fromMonths < DAY_CARE_BELOW);
      const persons = personsOf(scene, areaLoad(area, isDayCare ? squareFeetPerPerson.dayCare : squareFeetPerPerson.classroom));
      const load = isDayCare ? 'B02' : 'B01';
      return {
        name: 'the International Building Code',
        persons,
        wayWidth: widthIbc(persons.count),
        doorWidth: (exits) => Math.max(doorClear, (persons.count * widthPerPerson) / Math.max(1, exits)),
        exitsNeeded: persons.count > oneWayOut.persons ? 2 : 1,
        walk: { one: oneWayOut.walk, several: sprinklered ? walk.sprinklered : walk.plain },
        outwardFrom,
        sources: { width: ['B04', 'B07', load], doors: ['B04', 'B05', 'B07', load], walk: ['B05', 'B13', 'B15'], swing: ['B05', load] },
      };
    }
    case 'england-adb': {
      const { walk, persons: most } = egress.england;
      const persons = personsOf(scene, null);
      const width = widthEngland(persons.count);
      return {
        name: 'Approved Document B',
        persons,
        wayWidth: width,
        doorWidth: () => width,
        exitsNeeded: persons.count <= most.oneExit ? 1 : persons.count <= most.twoExits ? 2 : 3,
        walk: { one: walk.oneDirection, several: walk.severalDirections },
        outwardFrom: most.oneExit + 1,
        sources: { width: ['B17'], doors: ['B17', 'B18'], walk: ['B16'], swing: ['B18'] },
      };
    }
    default:
      return null;
  }
}

/** Persons for so much net floor (m²); parts of a person count as one. */
export const areaLoad = (area: number, squareFeet: number): number => Math.ceil(area / (squareFeet * SQUARE_FOOT) - 1e-9);

/** m² inside the walls without passages to elsewhere, toilets and storage. */
function netArea({ room, classroom }: Scene): number {
  const left = classroom.room.zones.filter((zone) => notNet.has(zone.kind)).map((zone) => zone.outline.map(([x, y]) => ({ x, y })));
  return room.isSound ? room.area - coveredArea(left, room.outline) / 1e6 : 0;
}

function personsOf({ classroom }: Scene, byArea: number | null): Persons {
  const { children, adults } = classroom;
  const entered = [...children.groups, ...adults].reduce((sum, { count }) => sum + count, 0);
  return { count: Math.max(entered, byArea ?? 0), entered, byArea };
}
