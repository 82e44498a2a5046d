import { measureExitWalks } from '#model/measures/exits.ts';
import { measureSight } from '#model/measures/sight.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Classroom } from '#model/schema/types.ts';
import { percentiles, type Times } from './percentiles.ts';

/** Runs before those that are timed, as for the live tier: after them the engine has translated what it will. */
const WARM_UP = 100;
const RUNS = 200;

interface SettleTimes {
  readonly sight: Times;
  readonly exits: Times;
  /** mm by which the farthest walk may still be longer than the one found. */
  readonly exitWithin: number;
}

/** Milliseconds of sight from three eyes, and of the farthest walks out, each from the start. */
export function settleTimes(classroom: Classroom): SettleTimes {
  const { corners } = classroom.room;
  const [x, y] = [Math.max(...corners.map((c) => c.x)), Math.max(...corners.map((c) => c.y))];
  const watch = [0.2, 0.5, 0.8].map((share, i) => ({ id: `eye${i}`, x: share * x, y: (1 - share) * y, eye: 1100 }));
  const scene = buildScene({ ...classroom, arrangements: classroom.arrangements.map((a) => ({ ...a, watch })) });
  const { toEach } = measureExitWalks(scene);
  return {
    sight: timed(scene, measureSight),
    exits: timed(scene, measureExitWalks),
    exitWithin: Math.max(...toEach.map((far) => (far ? far.most - far.least : 0))),
  };
}

function timed(scene: Scene, measure: (scene: Scene) => unknown): Times {
  const took: number[] = [];
  for (let run = -WARM_UP; run < RUNS; run++) {
    const start = performance.now();
    measure(scene);
    if (run >= 0) took.push(performance.now() - start);
  }
  return percentiles(took);
}
