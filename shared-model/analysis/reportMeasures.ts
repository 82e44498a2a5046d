import { reportMats } from '../measures/mats.ts';
import type { Measures } from '../measures/measures.ts';
import { reportPlaces } from '../measures/places.ts';
import { reportReach } from '../measures/reach.ts';
import { reportNarrow, reportWays } from '../measures/reportWays.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

/** Those that the live rules reckon anyway: shown at every frame of a drag. Mats and what counts them take too long for that. */
export function liveReportMeasures(measures: Measures): ReportMeasures {
  const ways = measures.ways();
  return {
    ways: reportWays(ways),
    narrow: reportNarrow(ways),
    reach: reportReach(measures.reach()),
    order: measures.order().strands(),
  };
}

export function reportMeasures(measures: Measures): ReportMeasures {
  return {
    ...liveReportMeasures(measures),
    mats: reportMats(measures.mats()),
    places: reportPlaces(measures.floorPlaces(), measures.placesOverYear(), measures.places()),
  };
}
