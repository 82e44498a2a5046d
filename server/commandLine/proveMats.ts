import loadHighs from 'highs';
import { pickWith } from '#model/geometry/pickMost.ts';
import { proveMats as proving } from '#model/measures/matProof.ts';
import { type Mats, measureMats } from '#model/measures/mats.ts';
import { seatStrips } from '#model/measures/seats.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';

export interface Proof {
  readonly mats: Mats | null;
  /** seconds that it took */
  readonly took: number;
}

/** Proves how many mats lie at once, for up to `seconds` beyond the search that every report makes: searches and the solver's questions end then too. */
export async function proveMats(
  classroom: Classroom,
  arrangement: string | null,
  seconds: number,
  now = () => performance.now() / 1000,
): Promise<Proof> {
  const highs = await loadHighs();
  const scene = buildScene(classroom, arrangement);
  const strips = seatStrips(scene);
  // However soon the time is over, no fewer mats than without a proof.
  const known = measureMats(scene, strips, 'better');
  const start = now();
  const left = (): number => seconds - (now() - start);
  const steps = proving(scene, strips, { pick: pickWith(highs, left), known, isOver: () => left() <= 0 });
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return { mats: step.value, took: now() - start };
    if (now() - start >= seconds) return { mats: step.value.mats, took: now() - start };
  }
}

/** What came of it, in one line. */
export function sayProof({ mats, took }: Proof): string {
  const spent = `${took.toFixed(1)} s`;
  if (!mats) return `Mats: the walls do not hold, so nothing could be looked for (${spent}).`;
  if (mats.proven) return `Mats: exactly ${mats.count}, proved in ${spent}.`;
  return `Mats: at least ${mats.count}, at most ${mats.upperBound}; not proved in ${spent}.`;
}
