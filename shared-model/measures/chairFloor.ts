import { clockwise, type Polygon } from '../geometry/polygon.ts';
import { add, lerp, scale, sub, unit } from '../geometry/vec.ts';
import { keptWith } from '../scene/kept.ts';
import type { SceneBody } from '../scene/types.ts';
import type { Side } from '../schema/types.ts';
import { CHAIR_OUT, chairSize, chairsShown } from './chairs.ts';

const sides: readonly Side[] = ['front', 'back', 'left', 'right'];

/** The floor that the chairs counted at a table take beside it: what is under it is the table's. One ring a chair. */
export const chairFloor = keptWith((table: SceneBody): readonly Polygon[] =>
  sides.flatMap((side) => {
    const count = chairsShown(table.piece?.seatSides[side] ?? 0);
    const { a, b, outward } = table.edges[side];
    const size = chairSize(side === 'front' || side === 'back' ? table.width : table.depth, count);
    const half = scale(unit(sub(b, a)), size / 2);
    const out = scale(outward, size / 2 + CHAIR_OUT);
    return Array.from({ length: count }, (_, i) => {
      const middle = lerp(a, b, (i + 0.5) / count);
      const [left, right] = [sub(middle, half), add(middle, half)];
      return clockwise([left, right, add(right, out), add(left, out)]);
    });
  }),
);
