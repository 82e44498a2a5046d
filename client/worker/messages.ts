import type { Report } from '#model/analysis/report.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import type { Mats } from '#model/measures/mats.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview } from '../session/types.ts';
import type { ClassroomChange } from './classroomChange.ts';
import type { SentReport } from './sentReport.ts';

/** live: what follows a drag. settle: everything that takes no longer than about a second. What takes longer has workers of its own. */
export type Work = 'live' | 'settle';

/** What the page asks of a worker. */
export interface Question {
  /** Rises with every question; an answer carries the number of its question. */
  readonly sequence: number;
  /** The whole classroom at first, then only what changed; null: nothing did. */
  readonly classroom: { readonly whole: Classroom } | { readonly change: ClassroomChange } | null;
  readonly arrangement: string;
  readonly preview: Preview | null;
  readonly work: Work;
  /** What a proof found of the mats of this very moment; null: nothing. */
  readonly mats: Mats | null;
}

/** Ends the work on the question before, which is then not answered. */
export interface Cancel {
  readonly cancel: true;
}

/** What the sheets show beside the report: too large or too slow to reckon on the page. */
export interface Aside {
  /** Every rule set, the one in force first; null until it has been reckoned. */
  readonly places: readonly FloorPlaces[] | null;
}

export interface Answer {
  readonly sequence: number;
  readonly work: Work;
  /** Of the rules that were run: live work leaves the slower ones out. */
  readonly report: Report;
  /** null: not reckoned in live work. */
  readonly aside: Aside | null;
  /** Checks that could not be worked out, in words. */
  readonly troubles: readonly string[];
}

/** An answer as it is posted. */
export interface SentAnswer extends Omit<Answer, 'report'> {
  readonly report: SentReport;
}

/** The whole question failed; the last report stands. */
export interface Failure {
  readonly sequence: number;
  readonly work: Work;
  readonly failure: string;
}
