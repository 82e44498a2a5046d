import { line, type Mark, rect, weights } from './marks.ts';

/** mm */
const SIDE = 3.4;

/** A box to tick by hand, (x, y) its upper left corner; ticked already where it is done. */
export const tickBox = (x: number, y: number, isDone = false): Mark[] => [
  rect(x, y, SIDE, SIDE, { weight: weights.outline }),
  ...(isDone
    ? [
        line(
          TICK.map((p) => ({ x: x + p.x, y: y + p.y })),
          { weight: weights.openSide },
        ),
      ]
    : []),
];

const TICK = [
  { x: 0.7, y: 1.8 },
  { x: 1.5, y: 2.7 },
  { x: 3, y: 0.6 },
];
