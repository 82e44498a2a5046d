import { expect, it } from 'vitest';
import type { Layout } from '#model/analysis/mendWays/layout.ts';
import type { Search } from '#model/analysis/mendWays/search.ts';
import { tighten } from '#model/analysis/mendWays/tighten.ts';

/** Whatever is asked holds: only what a move may be at all keeps it from growing shorter. */
const search = { looks: 0, holds: () => true } as unknown as Search;

function tightened(layout: Layout): Layout {
  const work = tighten(search, layout);
  for (let step = work.next(); ; step = work.next()) if (step.done) return step.value;
}

it('leaves a piece at its wall that went there from farther than half a metre, and makes a shorter move shorter', () => {
  const far = { x: 0, y: -1165 };
  expect(tightened(new Map([['p', far]])).get('p')).toEqual(far);
  expect(tightened(new Map([['p', { x: 0, y: -400 }]])).size).toBe(0);
});
