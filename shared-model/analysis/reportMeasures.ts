import type { Measures } from '../measures/measures.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

export function reportMeasures(_measures: Measures): ReportMeasures {
  return {};
}
