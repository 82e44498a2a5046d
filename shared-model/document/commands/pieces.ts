import { level as levelSchema, piece as pieceSchema } from '../../schema/arrangement.ts';
import type { Piece } from '../../schema/types.ts';
import { mapAt, writeEntry } from '../encode.ts';
import { layout } from '../layout.ts';
import type { Commands } from '../types.ts';
import { arrangementOf, type Context, freeId, part, pieceOf, removeFrom, setFields, setTogether, thing, whole } from './context.ts';
import { Gone } from './gone.ts';
import { inArrangement, keepNumbers, numbersOnceNamed } from './keepNumbers.ts';

type PieceCommands = Pick<Commands, 'addPiece' | 'movePiece' | 'changePiece' | 'putAwayPiece' | 'addLevel' | 'changeLevel' | 'removeLevel'>;

export function pieceCommands(context: Context): PieceCommands {
  return {
    addPiece(arrangement, piece) {
      const holder = arrangementOf(context, arrangement);
      if (!holder) throw new Gone('arrangement', arrangement);
      const pieces = thing(holder, 'pieces');
      const id = freeId(context, pieces, piece.id, piece.kind);
      const made = whole(pieceSchema, { ...piece, id }, 'piece');
      keepNumbers(
        context,
        inArrangement(arrangement, (before) => [...before, made]),
        () => writeEntry(mapAt(holder, 'pieces'), layout.pieces, id, made),
      );
      return id;
    },
    movePiece(arrangement, piece, to) {
      const target = pieceOf(context, arrangement, piece);
      if (!target) return false;
      const set = part(pieceSchema, { x: to.x, y: to.y, ...(to.rotation !== undefined && { rotation: to.rotation }) }, piece);
      context.step(() => setTogether(target, set));
      return true;
    },
    changePiece(arrangement, piece, set) {
      const target = pieceOf(context, arrangement, piece);
      if (!target) return false;
      const { id: _, ...checked } = part(pieceSchema, set, piece);
      const work = (): void => setFields(target, layout.pieces.entry, checked);
      const { name } = checked;
      if (typeof name !== 'string') context.step(work);
      else {
        const named = (before: Piece[]): Piece[] => before.map((one) => (one.id === piece ? { ...one, name } : one));
        keepNumbers(context, inArrangement(arrangement, named), work, numbersOnceNamed(context, piece, name));
      }
      return true;
    },
    putAwayPiece(arrangement, piece) {
      // Placements on it stay: a tray that somebody else moves meanwhile keeps its new place, the others read as on the table.
      return keepNumbers(
        context,
        inArrangement(arrangement, (before) => before.filter(({ id }) => id !== piece)),
        () => removeFrom(context, thing(arrangementOf(context, arrangement), 'pieces'), piece),
      );
    },
    addLevel(arrangement, piece, level) {
      const target = pieceOf(context, arrangement, piece);
      if (!target) throw new Gone('piece', piece);
      const id = freeId(context, thing(target, 'levels'), level.id, 'board');
      const made = whole(levelSchema, { ...level, id }, 'board');
      context.step(() => writeEntry(mapAt(target, 'levels'), layout.levels, id, made));
      return id;
    },
    changeLevel(arrangement, piece, level, set) {
      const target = thing(pieceOf(context, arrangement, piece)?.get('levels'), level);
      if (!target) return false;
      const { id: _, ...checked } = part(levelSchema, set, level);
      context.step(() => setFields(target, layout.levels.entry, checked));
      return true;
    },
    removeLevel(arrangement, piece, level) {
      const target = pieceOf(context, arrangement, piece);
      return target !== undefined && removeFrom(context, thing(target, 'levels'), level);
    },
  };
}
