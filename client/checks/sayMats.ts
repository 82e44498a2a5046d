import type { Report } from '#model/analysis/report.ts';
import { sayCount } from '../text/sayCount.ts';

/** "At least 8 mats, at most 12."; "exactly" only when that is proven; null: not reckoned. */
export function sayMats(report: Report | null): string | null {
  const mats = report?.measures.mats;
  if (typeof mats !== 'object' || mats === null) return null;
  const { count, upperBound, proven } = mats as { count?: unknown; upperBound?: unknown; proven?: unknown };
  if (typeof count !== 'number' || typeof upperBound !== 'number') return null;
  if (proven === true) return `Exactly ${sayCount(count, 'mat')} on the floor at once.`;
  return `At least ${sayCount(count, 'mat')} on the floor at once, at most ${upperBound}.`;
}
