import type { Scene } from '../scene/types.ts';
import { deductionMatrix } from '../standards/deductionMatrix.ts';
import { type ChosenRules, chooseRules, everyChoice } from './chosenRules.ts';
import { type CountedFloor, countedFloor } from './countedFloor.ts';
import type { FloorItem } from './floorItems.ts';
import { type AgeGroup, childrenOn, countOf, type SpaceNeed, spaceNeed } from './roomNeeds.ts';

/** How many children the floor takes under one rule set. */
export interface FloorPlaces {
  readonly rules: ChosenRules;
  /** null: the walls cross, so there is no floor to count. */
  readonly counted: CountedFloor | null;
  /** null: no children, or no figure per child. */
  readonly need: SpaceNeed | null;
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
  const areas = counted && need ? takes(counted, need) : { byArea: null, byAreaMost: null };
  const byAreaPerRoom =
    counted && need
      ? [counted.least - counted.others, ...room.otherRooms.map((other) => other.area)].reduce(
          (sum, area) => sum + childrenOn(area, need.perChild),
          0,
        )
      : null;
  return { rules, counted, need, enrolled: countOf(children.groups), ...areas, byAreaPerRoom };
}

const takes = (counted: CountedFloor, need: SpaceNeed) => ({
  byArea: childrenOn(counted.least, need.perChild),
  byAreaMost: childrenOn(counted.most, need.perChild),
});

/** The enrolment of each date against the floor of the rule set in force, in the order of the dates. */
export function measureYear(scene: Scene, { rules, counted }: FloorPlaces): YearPlaces[] {
  return [...scene.classroom.enrolment]
    .sort((p, q) => (p.from < q.from ? -1 : p.from > q.from ? 1 : 0))
    .map(({ from, groups }: { from: string; groups: readonly AgeGroup[] }): YearPlaces => {
      const children = countOf(groups);
      const need = rules.space && spaceNeed(groups, rules.space);
      const areas = counted && need ? takes(counted, need) : { byArea: null, byAreaMost: null };
      return { from, children, need, ...areas, over: areas.byArea === null ? 0 : Math.max(0, children - areas.byArea) };
    });
}
