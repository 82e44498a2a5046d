import type { Scene } from '../scene/types.ts';
import { measureExitWalks } from './exits.ts';
import { floorItems } from './floorItems.ts';
import { measureFloorPlaces, measurePlacesByRuleSet, measureYear } from './floorPlaces.ts';
import { type Mats, measureMats } from './mats.ts';
import { carryNoteKg } from './order/carryNote.ts';
import { inReachOf } from './order/inReach.ts';
import { orderOf } from './order.ts';
import { measureOverlaps } from './overlaps.ts';
import { measurePlaces } from './places.ts';
import { measureReach } from './reach.ts';
import { measureSeats, seatStrips } from './seats.ts';
import { measureSight } from './sight.ts';
import { measureWaysAndNarrow } from './waysMeasure.ts';
import { measureWork } from './workPlaces.ts';

/** What rules share, computed at first use, once per change. Each measure adds its line to `measuresOf`. */
export type Measures = ReturnType<typeof measuresOf>;

/** @param known.mats an answer that somebody looked for longer */
export function measuresOf(scene: Scene, known: { readonly mats?: Mats | null } = {}) {
  const reach = lazily(() => measureReach(scene));
  const items = lazily(() => (scene.room.isSound ? floorItems(scene) : []));
  const floorPlaces = lazily(() => measureFloorPlaces(scene, items()));
  const seats = lazily(() => measureSeats(scene));
  const strips = lazily(() => seatStrips(scene));
  const mats = lazily(() => (known.mats === undefined ? measureMats(scene, strips(), 'better') : known.mats));
  const workPlaces = lazily(() => measureWork(seats().total, mats()));
  return {
    scene,
    reach,
    order: lazily(() => orderOf(scene, (material) => carryNoteKg(reach(), material), inReachOf(reach))),
    overlaps: lazily(() => measureOverlaps(scene)),
    floorPlaces,
    placesByRuleSet: lazily(() => measurePlacesByRuleSet(scene, items())),
    placesOverYear: lazily(() => measureYear(scene, floorPlaces())),
    places: lazily(() => measurePlaces(scene, floorPlaces(), workPlaces())),
    workPlaces,
    seats,
    seatStrips: strips,
    /** looked for long enough to plan by */
    mats,
    /** looked for only as long as a drag allows */
    quickMats: lazily(() => measureMats(scene, strips(), 'quick')),
    ways: lazily(() => measureWaysAndNarrow(scene)),
    sight: lazily(() => measureSight(scene)),
    exitWalks: lazily(() => measureExitWalks(scene)),
  };
}

/** A value computed at first use and kept. */
function lazily<T>(compute: () => T): () => T {
  let kept: { value: T } | null = null;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}
