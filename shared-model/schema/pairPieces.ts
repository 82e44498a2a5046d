import type { Piece } from './types.ts';

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
    .flatMap((one) => free.filter((other) => whatItIs(one) === whatItIs(other)).map((other) => ({ one, other, far: apart(one, other) })))
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

const apart = (p: Piece, q: Piece): number => Math.hypot(p.x - q.x, p.y - q.y);

const whatItIs = ({ kind, name, width, depth, height }: Piece): string => [kind, name.trim(), width, depth, height].join('|');
