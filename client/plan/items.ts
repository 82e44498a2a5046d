import type { Chosen } from '#client/session/types.ts';
import { type Numbered, pieceNumbers } from '#model/schema/pieceNumbers.ts';
import type { Arrangement, Classroom, Piece, Room } from '#model/schema/types.ts';

/** A thing of the plan that can be chosen; lists, keys and drawing share their order. */
export type Item = Extract<Chosen, { kind: 'piece' | 'fixture' | 'opening' | 'corner' | 'wall' }>;

const kindOrder: readonly Piece['kind'][] = ['shelf', 'table', 'seat', 'mat-stand', 'easel', 'rug', 'adult-seat', 'other'];

/** Pieces as the lists show them: shelves by number, tables by number, then the rest by kind. */
export function piecesInOrder(arrangement: Pick<Arrangement, 'pieces'>, classroom: Numbered): Piece[] {
  const numbers = pieceNumbers(classroom);
  const orderOf = (piece: Piece): number => kindOrder.indexOf(piece.kind) * 10_000 + Number(numbers.get(piece.id)?.replace('T', '') ?? 0);
  return arrangement.pieces
    .map((piece) => ({ piece, order: orderOf(piece) }))
    .sort((p, q) => p.order - q.order)
    .map(({ piece }) => piece);
}

/** Everything that Tab goes through: pieces, what belongs to the room, doors and windows, walls. */
export function itemsInOrder(
  arrangement: Pick<Arrangement, 'pieces'>,
  classroom: Pick<Classroom, 'arrangements' | 'room'>,
  room: Room = classroom.room,
): Item[] {
  return [
    ...piecesInOrder(arrangement, classroom).map(({ id }): Item => ({ kind: 'piece', id })),
    ...room.fixtures.map(({ id }): Item => ({ kind: 'fixture', id })),
    ...room.openings.map(({ id }): Item => ({ kind: 'opening', id })),
    ...room.corners.map(({ id }): Item => ({ kind: 'wall', id })),
  ];
}

/** The item after the chosen one; null when it was the last, so that focus can go on. */
export function nextItem(items: readonly Item[], chosen: Chosen | null, step: 1 | -1): Item | null {
  if (!chosen) return (step === 1 ? items[0] : items.at(-1)) ?? null;
  const index = items.findIndex((item) => isSame(item, chosen));
  if (index < 0) return items[0] ?? null;
  return items[index + step] ?? null;
}

export const isSame = (p: Chosen | null, q: Chosen | null): boolean => p?.kind === q?.kind && p?.id === q?.id;

/** The chosen thing of the plan; null when nothing, or a tray, is chosen. */
export const itemOfChosen = (chosen: Chosen | null): Item | null => (chosen && chosen.kind !== 'tray' ? chosen : null);
