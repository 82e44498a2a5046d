import { keptWith } from '#model/scene/kept.ts';
import type { Arrangement, Piece } from '#model/schema/types.ts';

const kept = new WeakMap<readonly Piece[], ReadonlyMap<string, string>>();

/**
 * The number of each piece on the sheet: "7" for a shelf, "T3" for a table.
 * A number in the name or at the end of a short id is kept, so that a thing does not change
 * its number when another goes; the others take the free ones in file order.
 */
export function pieceNumbers(arrangement: Pick<Arrangement, 'pieces'>): ReadonlyMap<string, string> {
  const known = kept.get(arrangement.pieces);
  if (known) return known;
  const numbers = new Map<string, string>();
  for (const kind of ['shelf', 'table'] as const) {
    const pieces = arrangement.pieces.filter((piece) => piece.kind === kind);
    const prefix = kind === 'table' ? 'T' : '';
    for (const [id, number] of numberOneKind(pieces)) numbers.set(id, `${prefix}${number}`);
  }
  kept.set(arrangement.pieces, numbers);
  return numbers;
}

function numberOneKind(pieces: readonly Piece[]): Map<string, number> {
  const numbers = new Map<string, number>();
  const taken = new Set<number>();
  const take = (id: string, number: number): void => {
    numbers.set(id, number);
    taken.add(number);
  };
  for (const piece of pieces) {
    const { own } = ownNumber(piece);
    if (own !== null && !taken.has(own)) take(piece.id, own);
  }
  let next = 1;
  for (const piece of pieces) {
    if (numbers.has(piece.id)) continue;
    while (taken.has(next)) next++;
    take(piece.id, next);
  }
  return numbers;
}

/** "Shelf 7", "T3", "7 First numbers" or the ids "s7" and "t3" carry a number of their own. */
function saidNumber({ name, id }: Piece): { readonly own: number | null } {
  const said = /^\s*(?:shelf|table|t|no\.?)?\s*(\d{1,3})\b/i.exec(name)?.[1] ?? /^(?:s|shelf|t|table)[-_]?(\d{1,3})$/i.exec(id)?.[1];
  return { own: said === undefined ? null : Number(said) };
}

/** Asked of every piece at each step of a drag. */
const ownNumber = keptWith(saidNumber);

/** A number that no shelf or table of the arrangement has yet, for the name of a new one. */
export function nextNumber(arrangement: Pick<Arrangement, 'pieces'>, kind: 'shelf' | 'table'): number {
  const numbers = pieceNumbers(arrangement);
  const used = arrangement.pieces.filter((p) => p.kind === kind).map((p) => Number(numbers.get(p.id)?.replace('T', '') ?? 0));
  return Math.max(0, ...used) + 1;
}

/** Shelves and tables are known by number, so each copy gets its own. */
export function nameOfCopy(arrangement: Pick<Arrangement, 'pieces'>, piece: Piece): string {
  if (piece.kind === 'shelf') return `Shelf ${nextNumber(arrangement, 'shelf')}`;
  return piece.kind === 'table' ? `Table ${nextNumber(arrangement, 'table')}` : piece.name;
}
