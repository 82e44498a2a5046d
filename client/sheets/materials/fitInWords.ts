import type { FitOption } from '#model/measures/fit.ts';
import type { Scene } from '#model/scene/types.ts';
import { bestPlace } from '../../front/fitOptions.ts';
import { fitWord, sayFitPlace, sayNowhere } from '../../front/sayFit.ts';

/** What the table says of a thing on the table. place it: a gap takes it as it is; make room: others slide along; null: no board takes it. The same place as the panel offers first. */
export interface FitInWords {
  readonly say: string;
  readonly verb: 'place it' | 'make room' | null;
}

export function fitInWords(scene: Scene, options: readonly FitOption[]): FitInWords {
  if (options.length === 0) return { say: 'no board yet', verb: null };
  const best = bestPlace(options);
  if (!best) return { say: sayNowhere(scene, options, scene.classroom.display.units) ?? 'no board yet', verb: null };
  const isPushed = best.fits === 'pushed';
  const word = fitWord(best);
  const against = word.startsWith('in step') || word.startsWith('fits') ? '' : `, ${word} there`;
  return {
    say: `fits ${sayFitPlace(scene, best)}${isPushed ? ' with room made' : ''}${against}`,
    verb: isPushed ? 'make room' : 'place it',
  };
}
