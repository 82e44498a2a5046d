import type { Scene } from '../scene/types.ts';
import { deductionMatrix } from '../standards/deductionMatrix.ts';
import { type ChosenRules, chooseRules, everyChoice } from './chosenRules.ts';
import { type CountedFloor, countedFloor } from './countedFloor.ts';
import type { FloorItem } from './floorItems.ts';
import { type AgeGroup, childrenOn, countOf, evenSpace, type SpaceNeed, spaceNeed } from './roomNeeds.ts';

/** How many children the floor takes under one rule set. */
export interface FloorPlaces {
  readonly rules: ChosenRules;
  /** null: the walls cross, so there is no floor to count. */
  readonly counted: CountedFloor | null;
  /** null: no children, or no figure per child. */
  readonly need: SpaceNeed | null;
  /** m² a child, with the mix enrolled; without children the figure of a table that has only one. */
  readonly perChild: number | null;
  readonly enrolled: number;
  /** Most children of the enrolled mix on the floor that counts for sure; null: cannot be told. */
  readonly byArea: number | null;
  /** The same with everything open counted. */
  readonly byAreaMost: number | null;
  /** `byArea` with each room rounded down by itself; the cautious second figure. */
  readonly byAreaPerRoom: number | null;
}

/** One line of the enrolment over the year. */
export interface YearPlaces {
  /** date, as 2027-04-01 */
  readonly from: string;
  readonly children: number;
  readonly need: SpaceNeed | null;
  readonly byArea: number | null;
  readonly byAreaMost: number | null;
  /** Children above `byArea`; 0: none. */
  readonly over: number;
}

/** The rule set in force. */
export function measureFloorPlaces(scene: Scene, items: readonly FloorItem[]): FloorPlaces {
  return placesUnder(scene, items, chooseRules(scene.classroom));
}

/** Every rule set side by side, the one in force first. */
export function measurePlacesByRuleSet(scene: Scene, items: readonly FloorItem[]): FloorPlaces[] {
  return everyChoice(scene.classroom).map((rules) => placesUnder(scene, items, rules));
}

function placesUnder(scene: Scene, items: readonly FloorItem[], rules: ChosenRules): FloorPlaces {
  const { children, room, asked } = scene.classroom;
  const others = room.otherRooms.reduce((sum, other) => sum + other.area, 0);
  const deductions = rules.set?.deductions ?? deductionMatrix.silent;
  const counted = scene.room.isSound ? countedFloor(scene.room, others, items, deductions, asked) : null;
  const need = rules.space && spaceNeed(children.groups, rules.space);
  // Without children there is no mix of ages; a table that asks the same of every age needs none.
  const perChild = need?.perChild ?? (rules.space && evenSpace(rules.space));
  const rooms = counted ? [counted.least - counted.others, ...room.otherRooms.map((other) => other.area)] : [];
  return {
    rules,
    counted,
    need,
    perChild,
    enrolled: countOf(children.groups),
    ...takes(counted, perChild),
    byAreaPerRoom: counted && perChild !== null ? rooms.reduce((sum, area) => sum + childrenOn(area, perChild), 0) : null,
  };
}

function takes(counted: CountedFloor | null, perChild: number | null): Pick<FloorPlaces, 'byArea' | 'byAreaMost'> {
  if (!counted || perChild === null) return { byArea: null, byAreaMost: null };
  return { byArea: childrenOn(counted.least, perChild), byAreaMost: childrenOn(counted.most, perChild) };
}

/** The enrolment of each date against the floor of the rule set in force, in the order of the dates. */
export function measureYear(scene: Scene, { rules, counted }: FloorPlaces): YearPlaces[] {
  return [...scene.classroom.enrolment]
    .sort((p, q) => (p.from < q.from ? -1 : p.from > q.from ? 1 : 0))
    .map(({ from, groups }: { from: string; groups: readonly AgeGroup[] }): YearPlaces => {
      const children = countOf(groups);
      const need = rules.space && spaceNeed(groups, rules.space);
      const areas = takes(counted, need?.perChild ?? null);
      return { from, children, need, ...areas, over: areas.byArea === null ? 0 : Math.max(0, children - areas.byArea) };
    });
}
