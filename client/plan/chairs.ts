import { add, turn } from '#model/geometry/vec.ts';
import { chairSize, chairsShown, CHAIR_OUT as OUT } from '#model/measures/chairs.ts';
import type { Piece, Side } from '#model/schema/types.ts';
import type { TurnedBox } from './box.ts';

/** Where the counted seats of a table are drawn: spread along each side, facing the table. */
export function chairsOf(table: Piece): TurnedBox[] {
  const { width: w, depth: d } = table;
  const sides: readonly [Side, number, (along: number) => { x: number; y: number }, number][] = [
    ['front', w, (along) => ({ x: along - w / 2, y: d / 2 + OUT }), 180],
    ['back', w, (along) => ({ x: along - w / 2, y: -d / 2 - OUT }), 0],
    ['left', d, (along) => ({ x: -w / 2 - OUT, y: along - d / 2 }), 270],
    ['right', d, (along) => ({ x: w / 2 + OUT, y: along - d / 2 }), 90],
  ];
  return sides.flatMap(([side, long, place, facing]) => {
    const count = chairsShown(table.seatSides[side] ?? 0);
    const size = chairSize(long, count);
    return Array.from({ length: count }, (_, i): TurnedBox => {
      const local = place(((i + 0.5) * long) / count);
      return { ...add(table, turn(local, table.rotation)), width: size, depth: size, rotation: table.rotation + facing };
    });
  });
}
