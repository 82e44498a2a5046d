import type { Report } from '#model/analysis/report.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Day } from '../moveDay/dayOf.ts';
import type { View } from '../session/types.ts';
import type { Mark, Measure } from './marks.ts';
import type { Box, Sheet } from './paper.ts';
import type { PrintChoice } from './printChoice.ts';

export interface PrintInput {
  readonly scene: Scene;
  readonly report: Report | null;
  readonly choice: PrintChoice;
  /** The day of the move; null: there is nothing to move. */
  readonly move: Day | null;
  /** The shelf whose front is shown on the Room sheet. */
  readonly frontOf: View['frontOf'];
  readonly measure: Measure;
  /** ISO day */
  readonly today: string;
}

/** A page before it is known how many there are. */
export interface PageDraft {
  /** "Room", "Shelf fronts", "Labels", "Checks", "Move day" */
  readonly what: string;
  readonly sheet: Sheet;
  /** 50 for 1:50; null: nothing on it is drawn to scale */
  readonly scale: number | null;
  /** Why it is not the usual scale; "": it is */
  readonly scaleNote: string;
  readonly marks: readonly Mark[];
  /** What is drawn on it is a plan. */
  readonly isPlan?: boolean;
  /** What stands in the title for the arrangement; absent: the one that is shown. */
  readonly arrangement?: string;
  readonly title: { readonly form: 'strip' | 'column'; readonly box: Box };
}

export interface PrintPage {
  readonly key: string;
  readonly what: string;
  readonly sheet: Sheet;
  readonly scale: number | null;
  readonly note: string;
  /** mm from the upper left corner of the paper */
  readonly marks: readonly Mark[];
}
