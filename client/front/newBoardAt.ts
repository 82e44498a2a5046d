import type { FrontLayout } from './frontLayout.ts';

/** mm: boards come at whole centimetres; the first one stands this high */
const STEP = 10;
const FIRST = 60;

/** Where one more board goes (mm above the floor): into the middle of the widest free height. */
export function newBoardAt(layout: FrontLayout): number {
  const surfaces = layout.boards.filter((board) => board.level !== null).map((board) => board.surface);
  if (surfaces.length === 0) return FIRST;
  const marks = [0, ...surfaces, layout.height].sort((p, q) => p - q);
  let best = { from: 0, height: 0 };
  for (let i = 1; i < marks.length; i++) {
    const from = marks[i - 1] as number;
    const height = (marks[i] as number) - from;
    if (height > best.height) best = { from, height };
  }
  return Math.round((best.from + best.height / 2) / STEP) * STEP;
}
