import { catalogueById } from '#model/catalogue/catalogue.ts';
import type { Placement } from '#model/schema/types.ts';
import type { PieceInput } from './shell.ts';

/** mm between two trays and at the ends of a board */
const GAP = 50;
const END = 20;

export interface Row {
  readonly shelf: string;
  readonly side: 'front' | 'back';
  /** catalogue ids of one shelf side in reading order */
  readonly ids: readonly string[];
}

/**
 * Fills shelf sides board by board, in reading order. A board is closed when the next tray is too wide or too high for it.
 * @throws Error naming what does not fit: the demo is then laid out wrongly.
 */
export function fill(pieces: readonly PieceInput[], rows: readonly Row[]): Placement[] {
  return rows.flatMap(({ shelf: id, side, ids }) => {
    const shelf = pieces.find((piece) => piece.id === id);
    const levels = [...(shelf?.levels ?? [])].sort((p, q) => q.surface - p.surface);
    if (!shelf || levels.length === 0) throw new Error(`the demo has no shelf "${id}" with boards`);
    const width = shelf.width - 40;
    let board = 0;
    let x = END;
    return ids.map((material): Placement => {
      const thing = catalogueById.get(material);
      if (!thing || thing.width === null || thing.height === null) throw new Error(`"${material}" cannot stand on a shelf`);
      while (x + thing.width > width - END + 20 || thing.height > clearOf(levels, board)) {
        board += 1;
        x = END;
        if (board >= levels.length) throw new Error(`${material} no longer fits on ${id} ${side}`);
      }
      const level = levels[board]?.id ?? null;
      const placement: Placement = {
        material,
        piece: id,
        side,
        level,
        x,
        y: Math.max(0, Math.min(20, shelf.depth - (thing.depth ?? 0))),
        turned: false,
      };
      x += thing.width + GAP;
      return placement;
    });
  });
}

function clearOf(levels: readonly { surface: number }[], board: number): number {
  const above = levels[board - 1];
  const own = levels[board];
  return above && own ? above.surface - 20 - own.surface : Number.POSITIVE_INFINITY;
}
