import { judgePromised, type TrialFindings } from '#model/analysis/trialFindings.ts';
import type { Promised } from '#model/measures/trial.ts';
import type { Classroom } from '#model/schema/types.ts';
import { sayError } from '../../worker/sayError.ts';

/** What a trial asks of its worker: the classroom judged without and with the promised children. */
export interface TrialQuestion {
  readonly promised: Promised;
  readonly classroom: Classroom;
  readonly arrangement: string;
  /** ISO day */
  readonly today: string;
}

/** What the checks say then, or in words why there is none. */
export type TrialAnswer = { readonly found: TrialFindings } | { readonly failure: string };

/** Apart from the worker so that tests can run it. */
export function tryAtDesk({ promised, classroom, arrangement, today }: TrialQuestion): TrialAnswer {
  try {
    return { found: judgePromised(classroom, arrangement, promised, today) };
  } catch (error) {
    return { failure: sayError(error) };
  }
}
