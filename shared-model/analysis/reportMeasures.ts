import type { Measures } from '../measures/measures.ts';
import { reportPlaces } from '../measures/places.ts';
import { reportReach } from '../measures/reach.ts';
import { reportNarrow, reportWays } from '../measures/reportWays.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

export function reportMeasures(measures: Measures): ReportMeasures {
  const ways = measures.ways();
  return {
    ways: reportWays(ways),
    narrow: reportNarrow(ways),
    reach: reportReach(measures.reach()),
    places: reportPlaces(measures.floorPlaces(), measures.placesOverYear(), measures.places()),
    order: measures.order().strands(),
  };
}
