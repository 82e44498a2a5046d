import type { Point } from '../geometry/vec.ts';
import type { MatWindow } from './matCells.ts';

/** mm: about the side of a block; two to three mats lie in one. */
const BLOCK = 1600;
/** Larger windows take as long as the whole floor. */
const MOST_BLOCKS = 4;
/** Windows longer than so many times their width say little of the ways. */
const LONGEST = 2;

/**
 * Parts of a floor, the small ones first, each by the numbers of the points in it: every rectangle of few blocks that is not too long.
 * The whole floor is not among them.
 */
export function matWindows(points: readonly Point[]): MatWindow[] {
  const columns = blocksOf(points.map(({ x }) => x));
  const rows = blocksOf(points.map(({ y }) => y));
  const sizes: { wide: number; high: number }[] = [];
  for (let wide = 1; wide <= columns.count; wide++) for (let high = 1; high <= rows.count; high++) sizes.push({ wide, high });
  const seen = new Set<string>();
  return sizes
    .filter(({ wide, high }) => wide * high <= MOST_BLOCKS)
    .filter(({ wide, high }) => Math.max(wide, high) <= LONGEST * Math.min(wide, high))
    .sort((p, q) => p.wide * p.high - q.wide * q.high)
    .flatMap(({ wide, high }) => {
      const found: MatWindow[] = [];
      for (let left = 0; left + wide <= columns.count; left++)
        for (let top = 0; top + high <= rows.count; top++) {
          const numbers = points.flatMap((_, k) => {
            const column = (columns.of[k] as number) - left;
            const row = (rows.of[k] as number) - top;
            return column >= 0 && column < wide && row >= 0 && row < high ? [k] : [];
          });
          const key = numbers.join();
          if (numbers.length < 2 || numbers.length === points.length || seen.has(key)) continue;
          seen.add(key);
          found.push(new Set(numbers));
        }
      return found;
    });
}

function blocksOf(values: readonly number[]): { count: number; of: number[] } {
  const from = Math.min(...values);
  const span = Math.max(...values) - from;
  const count = Math.max(1, Math.round(span / BLOCK));
  return { count, of: values.map((value) => (span === 0 ? 0 : Math.min(count - 1, Math.floor(((value - from) / span) * count)))) };
}
