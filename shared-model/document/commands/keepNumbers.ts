import { numberGiven, pieceNumbers } from '../../schema/pieceNumbers.ts';
import type { Arrangement, Classroom } from '../../schema/types.ts';
import { writeField } from '../encode.ts';
import { layout, shapeOf } from '../layout.ts';
import { type Context, pieceOf } from './context.ts';

type Arrangements = Classroom['arrangements'];

/**
 * Runs a change of what stands in the arrangements as one step. Shelves and tables that would get another number by it
 * have theirs written beside them: on paper and in talk a thing is known by it.
 * @param change what the change makes of the arrangements
 * @param numbers those to be kept, where not as they are
 */
export function keepNumbers<T>(
  context: Context,
  change: (before: Arrangements) => Arrangements,
  work: () => T,
  numbers?: ReadonlyMap<string, string>,
): T {
  const before = context.read().arrangements;
  const wanted = numbers ?? pieceNumbers({ arrangements: before });
  const after = change(before);
  const next = pieceNumbers({ arrangements: after });
  // One that shifts may shift others once it is written: then all are.
  const isShifted = [...next].some(([id, number]) => number !== (wanted.get(id) ?? number));
  return context.step(() => {
    const done = work();
    for (const { id, pieces } of isShifted ? after : [])
      for (const piece of pieces) {
        const target = wanted.has(piece.id) && pieceOf(context, id, piece.id);
        if (target) writeField(target, 'number', shapeOf(layout.pieces.entry, 'number'), Number(wanted.get(piece.id)?.replace('T', '')));
      }
    return done;
  });
}

/** The pieces of one arrangement changed. */
export const inArrangement =
  (id: string, change: (pieces: Arrangement['pieces']) => Arrangement['pieces']) =>
  (before: Arrangements): Arrangements =>
    before.map((arrangement) => (arrangement.id === id ? { ...arrangement, pieces: change(arrangement.pieces) } : arrangement));

/** The numbers of a classroom once a piece is called by a new name: "Shelf 9" is a number given to it, where no other has it. */
export function numbersOnceNamed(context: Context, piece: string, name: string): ReadonlyMap<string, string> {
  const now = pieceNumbers(context.read());
  const [own, given] = [now.get(piece), numberGiven(name)];
  if (own === undefined || given === undefined) return now;
  const next = `${own.startsWith('T') ? 'T' : ''}${given}`;
  const others = [...now.values()];
  return others.includes(next) ? now : new Map([...now].map(([id, number]) => [id, number === own ? next : number]));
}
