import type { Measures } from '../measures/measures.ts';
import { reportPlaces } from '../measures/places.ts';
import { reportReach } from '../measures/reach.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

export function reportMeasures(measures: Measures): ReportMeasures {
  return {
    reach: reportReach(measures.reach()),
    places: reportPlaces(measures.floorPlaces(), measures.placesOverYear(), measures.places()),
    order: measures.order().strands(),
  };
}
