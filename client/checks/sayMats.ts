import type { Report } from '#model/analysis/report.ts';
import type { Mats } from '#model/measures/mats.ts';
import { sayCount } from '../text/sayCount.ts';

/**
 * "At least 8 mats, at most 12."; "exactly" only when that is proven; null: not reckoned.
 * @param running what a proof that runs has found of the same floor; null: none runs
 */
export function sayMats(report: Report | null, running: Pick<Mats, 'count' | 'upperBound'> | null = null): string | null {
  const mats = report?.measures.mats;
  if (typeof mats !== 'object' || mats === null) return null;
  const { count, upperBound, proven } = mats as { count?: unknown; upperBound?: unknown; proven?: unknown };
  if (typeof count !== 'number' || typeof upperBound !== 'number') return null;
  if (proven === true) return `Exactly ${sayCount(count, 'mat')} on the floor at once.`;
  const [least, most] = [Math.max(count, running?.count ?? 0), Math.min(upperBound, running?.upperBound ?? Infinity)];
  return `At least ${sayCount(least, 'mat')} on the floor at once, at most ${most}.`;
}
