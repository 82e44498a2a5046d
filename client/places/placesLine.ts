import type { Report } from '#model/analysis/report.ts';
import type { reportPlaces } from '#model/measures/places.ts';

/** The places line of the report. */
export type PlacesLine = ReturnType<typeof reportPlaces>;

/** null: not reckoned yet. */
export function placesLineOf(report: Report | null): PlacesLine | null {
  const line = report?.measures.places;
  return typeof line === 'object' && line !== null ? (line as PlacesLine) : null;
}

/** True when the number of mats is known to be exact. */
export function areMatsProven(report: Report | null): boolean {
  const mats = report?.measures.mats;
  return typeof mats === 'object' && mats !== null && 'proven' in mats && mats.proven === true;
}

/** Mats that fit at once; 0: none, or not reckoned. */
export function matsOf(report: Report | null): number {
  const mats = report?.measures.mats;
  if (typeof mats !== 'object' || mats === null || !('count' in mats)) return 0;
  return typeof mats.count === 'number' ? mats.count : 0;
}
