import { mendWays } from '#model/analysis/mendWays/mendWays.ts';
import type { MendAnswer, MendQuestion } from './mendMessages.ts';
import { sayError } from './sayError.ts';

/** Looks of the search between two words of how far it is. */
const TELL_EVERY = 25;

/** Searches to the end and tells how it goes; to stop it, its worker is ended. Apart from the worker so that tests can run it. */
export function lookForMend({ classroom, options }: MendQuestion, tell: (answer: MendAnswer) => void): void {
  try {
    const work = mendWays(classroom, options);
    let told = -TELL_EVERY;
    let step = work.next();
    let best: unknown = null;
    for (; !step.done; step = work.next()) {
      // What is found is told at once: who stops the search then keeps it.
      if (step.value.looks < told + TELL_EVERY && step.value.best === best) continue;
      told = step.value.looks;
      best = step.value.best;
      tell({ progress: step.value });
    }
    tell({ mend: step.value });
  } catch (error) {
    tell({ failure: sayError(error) });
  }
}
