import type { MoveFigures } from '#model/analysis/moveDay/figures.ts';
import type { Classroom } from '#model/schema/types.ts';

/** What the Move day sheet asks of its worker: the figures of some arrangements, one after the other. */
export interface MoveQuestion {
  readonly move: readonly string[];
  readonly classroom: Classroom;
}

/** One answer for each arrangement, or in words why there is none. */
export type MoveAnswer = { readonly figures: MoveFigures } | { readonly failure: string };
