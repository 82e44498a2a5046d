import type { Edit } from '#model/findings/edit.ts';
import type { Arrangement, Placement, Side } from '#model/schema/types.ts';
import { roundMm } from '#model/units/round.ts';

/** One board of one shelf side; level null: the piece's top. */
export interface BoardPlace {
  readonly piece: string;
  readonly side: Side;
  readonly level: string | null;
}

/** The edits that bring trays to their x (mm) on a board. A tray keeps how far back it stands and how it is turned. */
export function placeEdits(arrangement: Arrangement, board: BoardPlace, places: ReadonlyMap<string, number>): Edit[] {
  const now = new Map(arrangement.placements.map((placement) => [placement.material, placement]));
  return [...places].map(([material, x]): Edit => {
    const old = now.get(material);
    const isHere = old?.piece === board.piece && old.side === board.side && old.level === board.level;
    const placement: Placement = {
      ...(old ?? { turned: false }),
      material,
      ...board,
      x: roundMm(x),
      y: isHere ? old.y : 0,
      turned: old?.turned ?? false,
    };
    return { do: 'place', placement };
  });
}
