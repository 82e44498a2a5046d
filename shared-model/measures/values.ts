import type { ExitWalks } from './exits.ts';
import type { FloorItem } from './floorItems.ts';
import type { FloorPlaces, YearPlaces } from './floorPlaces.ts';
import type { Mats } from './mats.ts';
import type { OrderMeasure } from './order.ts';
import type { Overlap } from './overlaps.ts';
import type { Places } from './places.ts';
import type { Reach } from './reach.ts';
import type { SeatStrip, Seats } from './seats.ts';
import type { Sight } from './sight.ts';
import type { WaysMeasure } from './waysMeasure.ts';
import type { WorkPlaces } from './workPlaces.ts';

/** Every measure by name, and what it gives. */
export interface MeasureValues {
  readonly reach: Reach;
  readonly order: OrderMeasure;
  readonly overlaps: readonly Overlap[];
  readonly floorItems: readonly FloorItem[];
  readonly floorPlaces: FloorPlaces;
  readonly placesByRuleSet: readonly FloorPlaces[];
  readonly placesOverYear: readonly YearPlaces[];
  readonly places: Places;
  readonly workPlaces: WorkPlaces;
  readonly seats: Seats;
  readonly seatStrips: readonly SeatStrip[];
  /** looked for long enough to plan by */
  readonly mats: Mats | null;
  /** looked for only as long as a drag allows */
  readonly quickMats: Mats | null;
  readonly ways: WaysMeasure;
  /** null: the walls do not hold */
  readonly sight: Sight | null;
  readonly exitWalks: ExitWalks;
}

export type MeasureName = keyof MeasureValues;

/** What rules share: each is reckoned at first use, once per change. */
export type Measures = { readonly [K in MeasureName]: () => MeasureValues[K] };

/** What somebody outside already found; a measure takes it instead of looking for it. */
export interface Known {
  /** an answer that somebody looked for longer */
  readonly mats?: Mats | null;
}

const names = Object.keys({
  reach: 0,
  order: 0,
  overlaps: 0,
  floorItems: 0,
  floorPlaces: 0,
  placesByRuleSet: 0,
  placesOverYear: 0,
  places: 0,
  workPlaces: 0,
  seats: 0,
  seatStrips: 0,
  mats: 0,
  quickMats: 0,
  ways: 0,
  sight: 0,
  exitWalks: 0,
} satisfies Record<MeasureName, 0>) as MeasureName[];

/** Every measure, each asked for by its name; that a name gives its own value is whoever is asked's to hold. */
export const measuresBy = (ask: (name: MeasureName) => unknown): Measures =>
  Object.fromEntries(names.map((name) => [name, () => ask(name)])) as unknown as Measures;
