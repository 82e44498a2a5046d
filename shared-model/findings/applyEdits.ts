import type { Arrangement, Classroom, Piece } from '../schema/types.ts';
import type { Edit } from './edit.ts';

/** A classroom with the edits made in one arrangement. The given classroom is not changed. An edit on a missing thing does nothing. */
export function applyEdits(classroom: Classroom, arrangementId: string, edits: readonly Edit[]): Classroom {
  return edits.reduce((current, edit) => applyEdit(current, arrangementId, edit), classroom);
}

function applyEdit(classroom: Classroom, arrangementId: string, edit: Edit): Classroom {
  if (edit.do === 'move-corners') return { ...classroom, room: { ...classroom.room, corners: edit.corners } };
  return {
    ...classroom,
    arrangements: classroom.arrangements.map((a) => (a.id === arrangementId ? editArrangement(a, edit) : a)),
  };
}

function editArrangement(arrangement: Arrangement, edit: Exclude<Edit, { do: 'move-corners' }>): Arrangement {
  switch (edit.do) {
    case 'move-piece':
      return withPiece(arrangement, edit.piece, (piece) => ({
        ...piece,
        x: edit.x,
        y: edit.y,
        rotation: edit.rotation ?? piece.rotation,
      }));
    case 'change-piece':
      return withPiece(arrangement, edit.piece, (piece) => ({ ...piece, ...edit.set }));
    case 'change-level':
      return withPiece(arrangement, edit.piece, (piece) => ({
        ...piece,
        levels: piece.levels.map((level) => (level.id === edit.level ? { ...level, ...edit.set } : level)),
      }));
    case 'place':
      return {
        ...arrangement,
        placements: [...arrangement.placements.filter((p) => p.material !== edit.placement.material), edit.placement],
      };
    case 'put-away':
      return { ...arrangement, placements: arrangement.placements.filter((p) => p.material !== edit.material) };
  }
}

function withPiece(arrangement: Arrangement, id: string, change: (piece: Piece) => Piece): Arrangement {
  return { ...arrangement, pieces: arrangement.pieces.map((piece) => (piece.id === id ? change(piece) : piece)) };
}
