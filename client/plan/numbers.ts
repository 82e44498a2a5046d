import { type Numbered, pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Piece } from '#model/schema/types.ts';

/** A number that no shelf or table of the classroom has yet, in whichever arrangement, for the name of a new one. */
export function nextNumber(classroom: Numbered, kind: 'shelf' | 'table'): number {
  const used = [...pieceNumbers(classroom).values()].filter((number) => number.startsWith('T') === (kind === 'table'));
  return Math.max(0, ...used.map((number) => Number(number.replace('T', '')))) + 1;
}

/** Shelves and tables are known by number, so each copy gets its own. */
export function nameOfCopy(classroom: Numbered, piece: Piece): string {
  if (piece.kind === 'shelf') return `Shelf ${nextNumber(classroom, 'shelf')}`;
  return piece.kind === 'table' ? `Table ${nextNumber(classroom, 'table')}` : piece.name;
}
