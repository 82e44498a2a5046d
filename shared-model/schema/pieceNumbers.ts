import type { Arrangement, Piece } from './types.ts';

/** All arrangements of a classroom, as far as its numbers hang on them. */
export interface Numbered {
  readonly arrangements: readonly Pick<Arrangement, 'pieces'>[];
}

const kept = new WeakMap<Numbered['arrangements'], ReadonlyMap<string, string>>();

/**
 * The number of each shelf and table of a classroom, in whichever arrangement it stands: "7" for a shelf, "T3" for a table.
 * No two things have the same one. A number that was kept with the thing, in its name or at the end of a short id stays;
 * the others take the free ones in file order. Key: piece id.
 */
export function pieceNumbers({ arrangements }: Numbered): ReadonlyMap<string, string> {
  const known = kept.get(arrangements);
  if (known) return known;
  const things = thingsOf(arrangements);
  const numbers = new Map<string, string>();
  for (const kind of ['shelf', 'table'] as const) {
    const ofKind = things.filter(([first]) => first?.kind === kind);
    for (const [thing, number] of numberOneKind(ofKind))
      for (const { id } of thing) if (!numbers.has(id)) numbers.set(id, `${kind === 'table' ? 'T' : ''}${number}`);
  }
  kept.set(arrangements, numbers);
  return numbers;
}

/** One shelf or table as it stands in one arrangement after the other. */
type Thing = Piece[];

function thingsOf(arrangements: Numbered['arrangements']): Thing[] {
  const things: Thing[] = [];
  const thingOf = new Map<string, Thing>();
  for (const { pieces } of arrangements) {
    const here = new Set<Thing>();
    const others: Piece[] = [];
    const join = (piece: Piece, thing: Thing): void => {
      thing.push(piece);
      here.add(thing);
      if (!thingOf.has(piece.id)) thingOf.set(piece.id, thing);
    };
    for (const piece of pieces) {
      if (piece.kind !== 'shelf' && piece.kind !== 'table') continue;
      const thing = thingOf.get(piece.id);
      if (thing?.[0]?.kind === piece.kind) join(piece, thing);
      else others.push(piece);
    }
    for (const piece of others) {
      // As the move day pairs them: one of another id that is alike is the same thing, the nearest first.
      const [alike] = things
        .filter((thing) => !here.has(thing) && whatItIs(thing[0] as Piece) === whatItIs(piece))
        .sort((p, q) => apart(p[0] as Piece, piece) - apart(q[0] as Piece, piece));
      if (!alike) things.push([]);
      join(piece, alike ?? (things.at(-1) as Thing));
    }
  }
  return things;
}

const apart = (p: Piece, q: Piece): number => Math.hypot(p.x - q.x, p.y - q.y);

/** What makes two pieces of different ids one thing in two arrangements. */
export const whatItIs = ({ kind, name, width, depth, height }: Piece): string => [kind, name.trim(), width, depth, height].join('|');

function numberOneKind(things: readonly Thing[]): Map<Thing, number> {
  const numbers = new Map<Thing, number>();
  const taken = new Set<number>();
  const give = (numberOf: (piece: Piece) => number | undefined): void => {
    for (const thing of things) {
      if (numbers.has(thing)) continue;
      const number = thing.map(numberOf).find((own) => own !== undefined && !taken.has(own));
      if (number === undefined) continue;
      numbers.set(thing, number);
      taken.add(number);
    }
  };
  give(({ number }) => number);
  give(saidNumber);
  let next = 1;
  give(() => {
    while (taken.has(next)) next++;
    return next;
  });
  return numbers;
}

const said = new WeakMap<Piece, { readonly own: number | undefined }>();

/** "Shelf 7", "T3", "7 First numbers" or the ids "s7" and "t3" carry a number of their own. Asked of every piece at each step of a drag. */
function saidNumber(piece: Piece): number | undefined {
  const known = said.get(piece);
  if (known) return known.own;
  const { name, id } = piece;
  const words = /^\s*(?:shelf|table|t|no\.?)?\s*(\d{1,3})\b/i.exec(name)?.[1] ?? /^(?:s|shelf|t|table)[-_]?(\d{1,3})$/i.exec(id)?.[1];
  const own = words === undefined ? undefined : Number(words);
  said.set(piece, { own });
  return own;
}

/** The number that a name gives a thing in so many words: 9 of "Shelf 9"; "10 rods" is what it holds. */
export function numberGiven(name: string): number | undefined {
  const digits = /^\s*(?:shelf|table|t|no\.?)\s*(\d{1,3})\s*(?:$|[:,.–-])/i.exec(name)?.[1];
  return digits === undefined || Number(digits) < 1 ? undefined : Number(digits);
}
