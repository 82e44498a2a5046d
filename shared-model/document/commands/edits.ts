import type { Edit } from '../../findings/edit.ts';
import { rootOf } from '../roots.ts';
import type { Commands } from '../types.ts';
import { arrangementOf, type Context, pieceOf, thing } from './context.ts';

type Doing = Pick<Commands, 'movePiece' | 'changePiece' | 'changeLevel' | 'place' | 'putAway' | 'setCorners'>;

/** A fix is done whole or not at all: when one of the things in it is gone, nothing is written. */
export function applyEdits(context: Context, commands: Doing, arrangement: string, edits: readonly Edit[]): boolean {
  if (edits.length === 0 || !edits.every((edit) => isThere(context, arrangement, edit))) return false;
  return context.step(() => edits.map((edit) => apply(commands, arrangement, edit)).every(Boolean));
}

function apply(commands: Doing, arrangement: string, edit: Edit): boolean {
  switch (edit.do) {
    case 'move-piece': {
      const { x, y, rotation } = edit;
      return commands.movePiece(arrangement, edit.piece, { x, y, ...(rotation !== undefined && { rotation }) });
    }
    case 'change-piece':
      return commands.changePiece(arrangement, edit.piece, edit.set);
    case 'change-level':
      return commands.changeLevel(arrangement, edit.piece, edit.level, edit.set);
    case 'place':
      return commands.place(arrangement, edit.placement);
    case 'put-away':
      // A tray that two edits put away is away.
      return commands.putAway(arrangement, edit.material) || true;
    case 'move-corners':
      return commands.setCorners(edit.corners);
  }
}

function isThere(context: Context, arrangement: string, edit: Edit): boolean {
  switch (edit.do) {
    case 'move-piece':
    case 'change-piece':
      return pieceOf(context, arrangement, edit.piece) !== undefined;
    case 'change-level':
      return thing(pieceOf(context, arrangement, edit.piece)?.get('levels'), edit.level) !== undefined;
    case 'place': {
      const { material, piece, level } = edit.placement;
      if (!arrangementOf(context, arrangement) || !thing(rootOf(context.doc, 'materials'), material)) return false;
      if (piece === null) return true;
      const on = pieceOf(context, arrangement, piece);
      return on !== undefined && (level === null || thing(on.get('levels'), level) !== undefined);
    }
    case 'put-away':
      return thing(thing(arrangementOf(context, arrangement), 'placements'), edit.material) !== undefined;
    case 'move-corners':
      return edit.corners.length >= 3;
  }
}
