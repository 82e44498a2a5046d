import type { Scene } from '../scene/types.ts';
import { roundM2 } from '../units/round.ts';
import type { FloorPlaces, YearPlaces } from './floorPlaces.ts';
import { childrenWith, largestGroup } from './roomNeeds.ts';
import type { WorkPlaces } from './workPlaces.ts';

type Binding = 'area' | 'work' | 'adults' | 'group';

/** How many children the room takes, and what sets the limit. */
export interface Places {
  readonly byArea: number | null;
  /** Seats and the mats found; null: the walls do not hold. */
  readonly byWork: number | null;
  /** null: no adults entered, or the rule set has no ratio here. */
  readonly byAdults: number | null;
  /** The largest group that the rule set allows in one room; null: it does not say. */
  readonly byGroup: number | null;
  /** The smallest of those known; null: none is. */
  readonly places: number | null;
  readonly binding: Binding | null;
}

/** Joins the limits. By work only what was found counts, not what the bound allows. */
export function measurePlaces(scene: Scene, floor: FloorPlaces, work: WorkPlaces): Places {
  const { adults, children } = scene.classroom;
  const { ratios, space } = floor.rules;
  const limits: Readonly<Record<Binding, number | null>> = {
    area: floor.byArea,
    work: work.mats && work.least,
    adults: ratios && childrenWith(children.groups, adults, ratios),
    group: largestGroup(children.groups, space, ratios),
  };
  let binding: Binding | null = null;
  let places: number | null = null;
  for (const name of ['area', 'work', 'adults', 'group'] as const) {
    const limit = limits[name];
    if (limit === null || (places !== null && limit >= places)) continue;
    places = limit;
    binding = name;
  }
  return { byArea: limits.area, byWork: limits.work, byAdults: limits.adults, byGroup: limits.group, places, binding };
}

/**
 * The report's line; areas in m². Where the rule set leaves something open and the class has not answered, the
 * figures are the cautious ones (all of it deducted) and `…Most` gives the others.
 */
export function reportPlaces(
  floor: FloorPlaces,
  year: readonly YearPlaces[],
  { byArea, byWork, byAdults, byGroup, places, binding }: Places,
) {
  const { counted, need, enrolled } = floor;
  const area = (m2: number | undefined): number | null => (m2 === undefined ? null : roundM2(m2));
  return {
    ruleSet: floor.rules.id,
    countedArea: area(counted?.least),
    countedAreaMost: area(counted?.most),
    needArea: area(need?.need),
    spareArea: counted && need ? roundM2(counted.least - need.need) : null,
    byArea,
    byAreaMost: floor.byAreaMost,
    byAreaPerRoom: floor.byAreaPerRoom,
    byWork,
    byAdults,
    byGroup,
    places,
    enrolled,
    binding,
    open: counted?.open ?? [],
    year: year.map(({ from, children, over, ...rest }) => ({ from, children, byArea: rest.byArea, byAreaMost: rest.byAreaMost, over })),
  };
}
