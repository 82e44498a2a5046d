import { reportExits } from '../measures/exits.ts';
import { reportMats } from '../measures/mats.ts';
import { reportPlaces } from '../measures/places.ts';
import { reportReach } from '../measures/reportReach.ts';
import { reportNarrow, reportWays } from '../measures/reportWays.ts';
import { reportSight } from '../measures/sight.ts';
import type { Measures } from '../measures/values.ts';

/** The measures part of the report. Each measure adds its key. */
export interface ReportMeasures {
  readonly [key: string]: unknown;
}

/** Those that the live rules reckon anyway: shown at every frame of a drag. Mats and what counts them take too long for that. */
export function liveReportMeasures(measures: Measures): ReportMeasures {
  const ways = measures.ways();
  return {
    // Wider ways than a route are only known to be that; their exact widths wait for the whole report.
    ways: reportWays(ways.ways.filter((way) => !way.isAtLeast)),
    narrow: reportNarrow(ways),
    reach: reportReach(measures.reach()),
    order: measures.order().strands(),
  };
}

export function reportMeasures(measures: Measures): ReportMeasures {
  return {
    ...liveReportMeasures(measures),
    ways: reportWays(measures.ways().exact()),
    mats: reportMats(measures.mats()),
    places: reportPlaces(measures.floorPlaces(), measures.placesOverYear(), measures.places()),
    sight: reportSight(measures.sight()),
    exits: reportExits(measures.exitWalks()),
  };
}
