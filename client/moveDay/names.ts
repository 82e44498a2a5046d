import { type Numbered, pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Arrangement, Piece } from '#model/schema/types.ts';
import { nameOfPiece } from '../plan/describe.ts';

/** How the sheet calls pieces of two arrangements: by the numbers they bear on every sheet. */
export interface MoveNames {
  /** "7", "T3"; null: it has none. */
  number(piece: string): string | null;
  /** "shelf 7", "table T3", "the mat stand" */
  name(piece: string): string;
}

type Pieces = Pick<Arrangement, 'pieces'>;

/** @param earlierId the id in the earlier arrangement of a piece of the later one */
export function moveNames(classroom: Numbered, from: Pieces, to: Pieces, earlierId: (piece: string) => string): MoveNames {
  const numbers = pieceNumbers(classroom);
  const pieces = new Map<string, Piece>(from.pieces.map((piece) => [piece.id, piece]));
  for (const piece of to.pieces) {
    const id = earlierId(piece.id);
    if (!pieces.has(id)) pieces.set(id, piece);
  }
  return {
    number: (id) => numbers.get(id) ?? null,
    name: (id) => {
      const piece = pieces.get(id);
      if (!piece) return 'a thing that is gone';
      // Cupboards of the adults go by their names: nobody looks for a number on them.
      const byName = piece.name !== '' && (piece.for === 'adults' || !numbers.has(id));
      const name = byName ? piece.name : nameOfPiece(piece, numbers);
      return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
    },
  };
}
