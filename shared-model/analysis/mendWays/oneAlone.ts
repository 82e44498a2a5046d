import type { Layout } from './layout.ts';
import { FARTHEST } from './limits.ts';
import type { Search, SearchProgress } from './search.ts';

/** mm between the places that are tried. */
const STEP = 40;

/**
 * Of the given units one alone: the nearest place of a grid, finer than the search's own, where it holds. Where a mend of
 * several has been found, one of them often does as well by itself, in a place that no edge gives away.
 * @param below mm: only shorter moves
 * @param looks how often the ways may be measured
 */
export function* oneAlone(
  search: Search,
  units: readonly string[],
  { below, looks }: { readonly below: number; readonly looks: number },
  isAllowed: (layout: Layout) => boolean,
): Generator<SearchProgress, Layout | null> {
  const last = search.looks + looks;
  for (const { x, y, far } of placesWithin(Math.min(below, FARTHEST)))
    for (const unit of units) {
      if (search.looks >= last) return null;
      const layout: Layout = new Map([[unit, { x, y }]]);
      yield { looks: search.looks, total: far };
      if (search.holds(layout) && isAllowed(layout)) return layout;
    }
  return null;
}

/** Places of the grid round where a thing stands, the nearest first. mm. */
function placesWithin(most: number): { readonly x: number; readonly y: number; readonly far: number }[] {
  const places: { x: number; y: number; far: number }[] = [];
  const last = Math.floor(most / STEP) * STEP;
  for (let x = -last; x <= last; x += STEP)
    for (let y = -last; y <= last; y += STEP) {
      const far = Math.hypot(x, y);
      if (far > 0 && far < most) places.push({ x, y, far });
    }
  return places.sort((p, q) => p.far - q.far);
}
