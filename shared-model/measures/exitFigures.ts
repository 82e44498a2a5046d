import type { Scene } from '../scene/types.ts';
import { egress, widthEngland, widthIbc } from '../standards/egress.ts';
import { measureOccupants } from './occupants.ts';
import { countOf } from './roomNeeds.ts';

/** m² */
const SQUARE_FOOT = 0.3048 ** 2;

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
      const occupants = measureOccupants(scene);
      const load = occupants?.source ?? 'B01';
      const squareFeet = load === 'B02' ? squareFeetPerPerson.dayCare : squareFeetPerPerson.classroom;
      const persons = personsOf(scene, occupants && areaLoad(occupants.net, squareFeet));
      return {
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

function personsOf({ classroom }: Scene, byArea: number | null): Persons {
  const { children, adults } = classroom;
  const entered = countOf(children.groups) + countOf(adults);
  return { count: Math.max(entered, byArea ?? 0), entered, byArea };
}
