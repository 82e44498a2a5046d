import { type Mats, measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';

export interface Proof {
  readonly mats: Mats | null;
  /** seconds that it took */
  readonly took: number;
}

/**
 * Looks for places of mats for up to `seconds`, each time twice as long as before, until as many lie as the area bound
 * allows. A look that would end after the time is not begun.
 */
export function proveMats(classroom: Classroom, arrangement: string | null, seconds: number, now = () => performance.now() / 1000): Proof {
  const scene = buildScene(classroom, arrangement);
  const strips = seatStrips(scene);
  const start = now();
  let best = measureMats(scene, strips, 'better');
  let last = now() - start;
  for (let effort = 2; best && !best.proven && now() - start + 2 * last <= seconds; effort *= 2) {
    const before = now();
    const found = measureMats(scene, strips, effort);
    last = now() - before;
    if (found && found.count > best.count) best = found;
  }
  return { mats: best, took: now() - start };
}

/** What came of it, in one line. */
export function sayProof({ mats, took }: Proof): string {
  const spent = `${took.toFixed(1)} s`;
  if (!mats) return `Mats: the walls do not hold, so nothing could be looked for (${spent}).`;
  if (mats.proven) return `Mats: exactly ${mats.count}, proved in ${spent}.`;
  return `Mats: at least ${mats.count}, at most ${mats.upperBound}; not proved in ${spent}.`;
}
