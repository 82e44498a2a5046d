import type { Report } from '#model/analysis/report.ts';
import type { FloorPlaces } from '#model/measures/floorPlaces.ts';
import type { Classroom } from '#model/schema/types.ts';
import type { Preview } from '../session/types.ts';
import type { ClassroomChange } from './classroomChange.ts';

/** What the page asks of the worker. */
export interface Question {
  /** Rises with every question; an answer carries the number of its question. */
  readonly sequence: number;
  /** The whole classroom at first, then only what changed; null: nothing did. */
  readonly classroom: { readonly whole: Classroom } | { readonly change: ClassroomChange } | null;
  readonly arrangement: string;
  readonly preview: Preview | null;
  /** Also run the checks that take seconds. */
  readonly prove: boolean;
}

/** What the sheets show beside the report: too large or too slow to reckon on the page. */
export interface Aside {
  /** Every rule set, the one in force first; null until it has been reckoned. */
  readonly places: readonly FloorPlaces[] | null;
}

export interface Answer {
  readonly sequence: number;
  /** live: the slower checks are still those of an earlier answer. settled: all of one moment. */
  readonly stage: 'live' | 'settled' | 'proved';
  readonly report: Report;
  readonly aside: Aside;
  /** Checks that could not be worked out, in words. */
  readonly troubles: readonly string[];
}

/** The whole question failed; the last report stands. */
export interface Failure {
  readonly sequence: number;
  readonly failure: string;
}
