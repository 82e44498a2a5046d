import type { Scene } from '../scene/types.ts';
import { measureExitWalks } from './exits.ts';
import { floorItems } from './floorItems.ts';
import { measureFloorPlaces, measurePlacesByRuleSet, measureYear } from './floorPlaces.ts';
import { type Desk, Kept, type Reading } from './kept.ts';
import { measureMats } from './mats.ts';
import { carryNoteKg } from './order/carryNote.ts';
import { inReachOf } from './order/inReach.ts';
import { orderOf } from './order.ts';
import { measureOverlaps } from './overlaps.ts';
import { measurePlaces } from './places.ts';
import { measureReach } from './reach.ts';
import { measureSeats, seatStrips } from './seats.ts';
import { measureSight } from './sight.ts';
import { type Known, type MeasureName, type Measures, type MeasureValues, measuresBy } from './values.ts';
import { measureWaysAndNarrow } from './waysMeasure.ts';
import { measureWork } from './workPlaces.ts';

export type { Measures } from './values.ts';

/** How each measure is reckoned. A new one adds its line here and in `MeasureValues`. */
const reckon: { readonly [K in MeasureName]: (from: Reading<MeasureValues[K]>) => MeasureValues[K] } = {
  reach: ({ scene }) => measureReach(scene),
  order: ({ scene, measures, before }) =>
    orderOf(scene, (material) => carryNoteKg(measures.reach(), material), inReachOf(measures.reach), before),
  overlaps: ({ scene }) => measureOverlaps(scene),
  floorItems: ({ scene }) => (scene.room.isSound ? floorItems(scene) : []),
  floorPlaces: ({ scene, measures }) => measureFloorPlaces(scene, measures.floorItems()),
  placesByRuleSet: ({ scene, measures }) => measurePlacesByRuleSet(scene, measures.floorItems()),
  placesOverYear: ({ scene, measures }) => measureYear(scene, measures.floorPlaces()),
  places: ({ scene, measures }) => measurePlaces(scene, measures.floorPlaces(), measures.workPlaces()),
  workPlaces: ({ measures }) => measureWork(measures.seats().total, measures.mats()),
  seats: ({ scene }) => measureSeats(scene),
  seatStrips: ({ scene }) => seatStrips(scene),
  mats: ({ scene, measures, known }) =>
    known.mats === undefined ? measureMats(scene, measures.seatStrips(), 'better', measures.ways()) : known.mats,
  quickMats: ({ scene, measures }) => measureMats(scene, measures.seatStrips(), 'quick', measures.ways()),
  ways: ({ scene, before }) => measureWaysAndNarrow(scene, before),
  sight: ({ scene }) => measureSight(scene),
  exitWalks: ({ scene }) => measureExitWalks(scene),
};

/** The measures of one scene, and of the next: what nothing that changed goes into is kept. */
export class MeasureDesk implements Desk {
  version = 0;
  /** The measures as somebody outside the rules asks for them. */
  readonly measures: Measures = measuresBy((name) => this.measure(name));
  private readonly kept = new Map<MeasureName, Kept<unknown>>();

  constructor(
    public scene: Scene,
    public known: Known = {},
  ) {}

  moveTo(scene: Scene, known: Known): void {
    this.scene = scene;
    this.known = known;
    this.version++;
  }

  measure<K extends MeasureName>(name: K): MeasureValues[K] {
    let kept = this.kept.get(name) as Kept<MeasureValues[K]> | undefined;
    if (!kept) {
      kept = new Kept<MeasureValues[K]>(this, reckon[name]);
      this.kept.set(name, kept as Kept<unknown>);
    }
    return kept.get();
  }
}

/** The measures of one scene that stands by itself. */
export const measuresOf = (scene: Scene, known: Known = {}): Measures => new MeasureDesk(scene, known).measures;
