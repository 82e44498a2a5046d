import type { Mend, MendOptions, MendProgress } from '#model/analysis/mendWays/mendWays.ts';
import type { Classroom } from '#model/schema/types.ts';

/** What the page asks of the worker that looks for a mend of the ways: one question, then it is done. */
export interface MendQuestion {
  readonly classroom: Classroom;
  readonly options: MendOptions;
}

/** How far the search is, and at its end what came of it. */
export type MendAnswer = { readonly progress: MendProgress } | { readonly mend: Mend } | { readonly failure: string };
