import { expect, it } from 'vitest';
import { measureWays, type Way } from '#model/measures/ways.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { ClipperWays } from './clipperWays.ts';
import { patience } from './runs.ts';
import { withRoom } from './withRoom.ts';

/**
 * A width is right to so many mm when a disc that much narrower gets through and one that much wider does not: the two
 * probes between which a bisection on offsets would end.
 */
const WITHIN = 0.15;
const BATCHES = 10;
/** Asked only where the usual exactness of the offsets finds fault. */
const FINER = { arc: 0.000_1, touch: 0.000_05 };

/** Every way of so many rooms, seeds from `from` in steps of `step`, against offsets of clipper2. */
export function waysAgainstClipper(
  room: (seed: number) => Classroom,
  { from, step, rooms }: { from: number; step: number; rooms: number },
) {
  it.each(Array.from({ length: BATCHES }, (_, k) => k))(
    `agrees in ${Math.ceil(rooms / BATCHES)} rooms, batch %i`,
    { timeout: patience },
    (batch) => {
      let checked = 0;
      for (let k = batch; k < rooms; k += BATCHES) {
        const seed = from + k * step;
        const classroom = room(seed);
        checked += withRoom(`seed ${seed}`, classroom, () => check(classroom));
      }
      expect(checked).toBeGreaterThan((2 * rooms) / BATCHES);
    },
  );
}

function check(classroom: Classroom): number {
  const scene = buildScene(classroom);
  expect(scene.room.isSound, 'the walls hold').toBe(true);
  const usual = new ClipperWays(scene);
  const ways = measureWays(scene).filter((way) => way.from !== null);
  const doubted = ways.filter((way) => faultOf(usual, way) !== null);
  const finer = new ClipperWays(scene, FINER);
  expect(
    doubted.flatMap((way) => {
      const fault = faultOf(finer, way);
      return fault ? [`${way.to} ${way.side ?? ''} from ${way.from}, ${way.width.toFixed(3)}: ${fault}`] : [];
    }),
  ).toEqual([]);
  return ways.length;
}

function faultOf(other: ClipperWays, { target, width }: Way): string | null {
  if (width > WITHIN && !other.canReach(target, width - WITHIN)) return 'too wide';
  return other.canReach(target, width + WITHIN) ? 'too narrow' : null;
}
