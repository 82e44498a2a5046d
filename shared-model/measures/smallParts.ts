import { boxPoints, fitsInside, longestIn, roundPoints } from '../geometry/truncatedCylinder.ts';
import type { Material } from '../schema/types.ts';
import { smallPartsCylinder } from '../standards/smallPartsCylinder.ts';

/** Whether the smallest loose piece fits into the test cylinder for small parts. */
type FitsCylinder = 'fits' | 'doubtful' | 'no';

const kept = new Map<string, FitsCylinder>();
/** A class does not measure more pieces than this in one sitting; a hostile file might. */
const MOST_KEPT = 2_000;

/**
 * fits: the box of its three extents fits in some position, so the piece does; no: not even the round body of these
 * extents does, or it is longer than the cylinder anywhere; doubtful: its shape decides. Of a piece whose greatest
 * extent alone is known the cube stands for the largest it may be.
 */
export function fitsCylinder(smallest: NonNullable<Material['smallest']>): FitsCylinder {
  const extents = typeof smallest === 'number' ? ([smallest, smallest, smallest] as const) : smallest;
  const [a, b, c] = [...extents].sort((p, q) => p - q) as [number, number, number];
  const { across, shallow } = smallPartsCylinder;
  if (c > longestIn(smallPartsCylinder)) return 'no';
  if (c <= shallow && Math.hypot(a, b) <= across) return 'fits';
  const key = typeof smallest === 'number' ? `${c}` : `${a}/${b}/${c}`;
  const known = kept.get(key);
  if (known) return known;
  const answer = work(typeof smallest === 'number', [a, b, c]);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, answer);
  return answer;
}

function work(isGreatestOnly: boolean, extents: readonly [number, number, number]): FitsCylinder {
  if (extents[0] <= smallPartsCylinder.across && fitsInside(boxPoints(extents), smallPartsCylinder)) return 'fits';
  if (isGreatestOnly) return 'doubtful';
  // The least width of the round body is its smallest extent, and nothing wider than the cylinder goes in.
  if (extents[0] > smallPartsCylinder.across) return 'no';
  return fitsInside(roundPoints(extents), smallPartsCylinder) ? 'doubtful' : 'no';
}
