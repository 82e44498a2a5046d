import type { Point } from '../../geometry/vec.ts';
import { type Layout, totalOf } from './layout.ts';
import { FARTHEST } from './limits.ts';
import type { Search, SearchProgress } from './search.ts';

/** mm: the first steps by which moves are made shorter; halved until 1 mm. */
const FIRST_STEP = 64;

/**
 * A layout that holds, with its moves made shorter as far as steps of 1 mm bring it: no single step of one piece, along
 * or across the plan or straight back, gives a smaller total that still holds.
 */
export function* tighten(search: Search, layout: Layout): Generator<SearchProgress, Layout> {
  let best = layout;
  for (let step = FIRST_STEP; step >= 1; ) {
    const better = yield* shorter(search, best, step);
    if (better) best = better;
    else step /= 2;
  }
  return best;
}

function* shorter(search: Search, layout: Layout, step: number): Generator<SearchProgress, Layout | null> {
  const total = totalOf(layout);
  for (const [unit, shift] of layout) {
    for (const next of steps(shift, step)) {
      // What goes farther goes to its wall, and stays there.
      if (Math.hypot(next.x, next.y) > FARTHEST) continue;
      const tried = new Map(layout);
      if (next.x === 0 && next.y === 0) tried.delete(unit);
      else tried.set(unit, next);
      if (totalOf(tried) > total - 0.5) continue;
      yield { looks: search.looks, total };
      if (search.holds(tried)) return tried;
    }
  }
  return null;
}

/** Straight back first, then along and across. Whole steps, so that places stay whole mm. */
function steps({ x, y }: Point, by: number): Point[] {
  const far = Math.hypot(x, y);
  const left = Math.max(0, far - by) / far;
  const nearer = (value: number): number => (Math.abs(value) <= by ? 0 : value - Math.sign(value) * by);
  return [
    { x: x - Math.round(x * (1 - left)), y: y - Math.round(y * (1 - left)) },
    { x: nearer(x), y },
    { x, y: nearer(y) },
    ...[-1, 1].flatMap((sign) => [
      { x: nearer(x), y: y + sign * by },
      { x: x + sign * by, y: nearer(y) },
    ]),
  ];
}
