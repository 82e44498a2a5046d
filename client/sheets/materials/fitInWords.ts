import type { FitOption } from '#model/measures/fit.ts';
import type { Scene } from '#model/scene/types.ts';
import { bestFree } from '../../front/fitOptions.ts';
import { sayFitPlace, sayNowhere } from '../../front/sayFit.ts';

/** What the table says of a thing on the table. place it: a gap takes it as it is; make room: others slide along; null: no board takes it. */
export interface FitInWords {
  readonly say: string;
  readonly verb: 'place it' | 'make room' | null;
}

export function fitInWords(scene: Scene, options: readonly FitOption[]): FitInWords {
  if (options.length === 0) return { say: 'no board yet', verb: null };
  const free = bestFree(options);
  if (free) return { say: `fits ${sayFitPlace(scene, free)}${free.isInStep ? '' : ', out of step there'}`, verb: 'place it' };
  const nowhere = sayNowhere(scene, options, scene.classroom.display.units);
  return nowhere ? { say: nowhere, verb: null } : { say: 'no gap wide enough', verb: 'make room' };
}
