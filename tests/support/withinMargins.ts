import { expect } from 'vitest';
import { boundsOfMarks } from '#client/print/marks.ts';
import { averageWidth } from '#client/print/measureOnPaper.ts';
import type { PrintPage } from '#client/print/pageTypes.ts';

/** Nothing of a printed page lies more than 1 mm outside its margins. */
export function expectWithinMargins({ sheet: { inner }, marks }: PrintPage): void {
  const box = boundsOfMarks(marks, averageWidth);
  expect(box.minX).toBeGreaterThan(inner.x - 1);
  expect(box.minY).toBeGreaterThan(inner.y - 1);
  expect(box.maxX).toBeLessThan(inner.x + inner.width + 1);
  expect(box.maxY).toBeLessThan(inner.y + inner.height + 1);
}
