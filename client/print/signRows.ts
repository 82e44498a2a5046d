import type { FlowRow } from './flow.ts';
import { type Mark, words } from './marks.ts';

/** A line or a mark, and what it means. */
export interface Sign {
  readonly text: string;
  /** mm: from x to 8 mm right of it, about y */
  readonly draw: (x: number, y: number) => readonly Mark[];
}

/** Signs with their meaning, in two columns where there is room. */
export function signRows(signs: readonly Sign[], width: number): FlowRow[] {
  const count = width < 74 ? 1 : 2;
  return Array.from(
    { length: Math.ceil(signs.length / count) },
    (_, row): FlowRow => ({
      height: 4.4,
      draw: (x, y) =>
        signs.slice(count * row, count * (row + 1)).flatMap(({ text, draw }, i) => {
          const at = x + (i * width) / count;
          return [...draw(at, y + 2.2), words(text, at + 10, y + 2.2, { size: 2.3 })];
        }),
    }),
  );
}
