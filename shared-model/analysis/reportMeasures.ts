import type { Measures } from '../measures/measures.ts';
import { reportReach } from '../measures/reach.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

export function reportMeasures(measures: Measures): ReportMeasures {
  return {
    reach: reportReach(measures.reach()),
    order: measures.order().strands(),
  };
}
