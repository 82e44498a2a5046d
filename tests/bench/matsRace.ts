import { tileRing } from '#model/geometry/tile.ts';
import { matTurns } from '#model/measures/floor.ts';
import { type Effort, measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { keeperOfMeasured } from '#model/measures/waysKeep.ts';
import { measureWaysAndNarrow, type WaysMeasure } from '#model/measures/waysMeasure.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import { areApart, type LaidMat } from '#tests/support/matChecker.ts';
import { rasterPlaces } from '#tests/support/matRaster.ts';

const WARM_UP = 15;
const RUNS = 15;

/** Mats of some rooms, all told, and the ms of one room: the least of some runs, as a mean over the rooms. */
interface Laid {
  readonly count: number;
  readonly took: number;
}

/** Mats laid by the search, and as an engineer would lay them: one after the other on a raster, each that leaves the ways open. */
interface MatsRace {
  readonly quick: Laid;
  readonly better: Laid;
  /** No more by area, all told. */
  readonly most: number;
  readonly raster: Laid;
}

/** Ways are measured before, and asked by both sides in the same manner. */
export function matsRace(rooms: readonly Classroom[]): MatsRace {
  const asked = rooms.map((room) => {
    const scene = buildScene(room);
    return { scene, ways: measureWaysAndNarrow(scene) };
  });
  const lay = (effort: Effort) => (scene: Scene, ways: WaysMeasure) => measureMats(scene, seatStrips(scene), effort, ways)?.count ?? 0;
  for (let run = 0; run < WARM_UP; run++) for (const { scene, ways } of asked) lay('quick')(scene, ways);
  const most = asked.reduce((sum, { scene, ways }) => sum + (measureMats(scene, seatStrips(scene), 'quick', ways)?.upperBound ?? 0), 0);
  return {
    quick: laid(asked, lay('quick'), RUNS),
    better: laid(asked, lay('better'), 1),
    most,
    raster: laid(asked, onRaster, 1),
  };
}

function laid(
  asked: readonly { readonly scene: Scene; readonly ways: WaysMeasure }[],
  lay: (scene: Scene, ways: WaysMeasure) => number,
  runs: number,
): Laid {
  let count = 0;
  let took = 0;
  for (const { scene, ways } of asked) {
    let least = Infinity;
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const start = performance.now();
      found = lay(scene, ways);
      least = Math.min(least, performance.now() - start);
    }
    count += found;
    took += least / asked.length;
  }
  return { count, took };
}

function onRaster(scene: Scene, ways: WaysMeasure): number {
  const { mat, gap } = scene.classroom.floorWork;
  const keeper = keeperOfMeasured(scene, ways);
  const ring = ({ x, y, rotation }: LaidMat) => tileRing({ ...mat, gap }, { x, y, turn: rotation });
  let best = 0;
  for (const turn of matTurns(scene, Math.min(mat.width, mat.depth))) {
    const placed: LaidMat[] = [];
    for (const place of rasterPlaces(scene, turn, Infinity))
      if (placed.every((other) => areApart(place, other, gap)) && keeper.keeps([...placed, place].map(ring))) placed.push(place);
    best = Math.max(best, placed.length);
  }
  return best;
}
