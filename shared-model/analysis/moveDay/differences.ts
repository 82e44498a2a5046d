import { distance } from '../../geometry/vec.ts';
import { whatItIs } from '../../schema/pieceNumbers.ts';
import type { Arrangement, Piece } from '../../schema/types.ts';

/** A piece in two arrangements; null: it is not in that one. */
export interface PieceChange {
  /** Its id in the earlier arrangement, else in the later one. */
  readonly id: string;
  readonly before: Piece | null;
  readonly after: Piece | null;
  /** mm between its two places */
  readonly by: number;
  /** degrees clockwise, above -180 up to 180 */
  readonly turned: number;
  /** It is of another size: another thing stands there. */
  readonly isExchanged: boolean;
  readonly hasOtherBoards: boolean;
}

/** mm, degrees: less is rounding. */
const SAME_PLACE = 0.5;
const SAME_TURN = 0.05;

/** Pieces of two arrangements paired: by id and kind, then by what they are, the nearest first. In the order of the earlier one. */
export function pairPieces(
  before: readonly Piece[],
  after: readonly Piece[],
): { readonly before: Piece | null; readonly after: Piece | null }[] {
  const later = new Map(after.map((piece) => [piece.id, piece]));
  const partner = new Map<Piece, Piece>();
  for (const piece of before) {
    const same = later.get(piece.id);
    if (same?.kind === piece.kind) partner.set(piece, same);
  }
  const taken = new Set(partner.values());
  const free = after.filter((piece) => !taken.has(piece));
  const alike = before
    .filter((piece) => !partner.has(piece))
    .flatMap((one) => free.filter((other) => whatItIs(one) === whatItIs(other)).map((other) => ({ one, other, far: distance(one, other) })))
    .sort((p, q) => p.far - q.far);
  for (const { one, other } of alike) {
    if (partner.has(one) || taken.has(other)) continue;
    partner.set(one, other);
    taken.add(other);
  }
  return [
    ...before.map((piece) => ({ before: piece, after: partner.get(piece) ?? null })),
    ...after.filter((piece) => !taken.has(piece)).map((piece) => ({ before: null, after: piece })),
  ];
}

/** What is moved, turned, exchanged, new or put away, and shelves whose boards are others. */
export function pieceChanges(before: Pick<Arrangement, 'pieces'>, after: Pick<Arrangement, 'pieces'>): PieceChange[] {
  return pairPieces(before.pieces, after.pieces).map(changeOf).filter(isChange);
}

const isChange = ({ before, after, by, turned, isExchanged, hasOtherBoards }: PieceChange): boolean =>
  !before || !after || by > 0 || turned !== 0 || isExchanged || hasOtherBoards;

function changeOf({ before, after }: { before: Piece | null; after: Piece | null }): PieceChange {
  const id = before?.id ?? after?.id ?? '';
  if (!before || !after) return { id, before, after, by: 0, turned: 0, isExchanged: false, hasOtherBoards: false };
  const by = distance(before, after);
  const turned = quarterless(after.rotation - before.rotation);
  return {
    id,
    before,
    after,
    by: by < SAME_PLACE ? 0 : by,
    turned: Math.abs(turned) < SAME_TURN ? 0 : turned,
    isExchanged: (['width', 'depth', 'height'] as const).some(
      (key) => before[key] !== null && after[key] !== null && before[key] !== after[key],
    ),
    hasOtherBoards: boardsOf(before) !== boardsOf(after),
  };
}

function quarterless(degrees: number): number {
  const rest = ((degrees % 360) + 360) % 360;
  return rest > 180 ? rest - 360 : rest;
}

const boardsOf = ({ levels, sides, divider }: Piece): string =>
  JSON.stringify([levels.map(({ surface }) => surface).sort((p, q) => q - p), [...sides].sort(), divider]);
