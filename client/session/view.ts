import { pickArrangement } from '#model/scene/build.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import type { View } from './types.ts';

export function arrangementShown(classroom: Classroom, view: Pick<View, 'arrangement'>): Arrangement {
  const shown = pickArrangement(classroom, view.arrangement);
  if (!shown) throw new Error('a classroom has at least one arrangement');
  return shown;
}

export function firstView(classroom: Classroom): View {
  const { id } = arrangementShown(classroom, { arrangement: '' });
  return {
    sheet: 'room',
    arrangement: id,
    chosen: null,
    frontOf: null,
    material: null,
    finding: null,
    compared: null,
    laid: null,
    preview: null,
  };
}

/** The view after a change of it: choosing a shelf shows its front. The same object when nothing changes. */
export function changedView(classroom: Classroom, view: View, change: Partial<View>): View {
  const next = { ...view, ...change };
  const chosen = change.chosen;
  // The one that lay under is shown: the two change places.
  if (next.laid === next.arrangement) next.laid = view.arrangement === next.arrangement ? null : view.arrangement;
  if (chosen?.kind === 'piece' && change.frontOf === undefined && next.frontOf?.piece !== chosen.id) {
    const piece = arrangementShown(classroom, next).pieces.find((p) => p.id === chosen.id);
    if (piece?.kind === 'shelf') next.frontOf = { piece: piece.id, side: piece.sides[0] ?? 'front' };
  }
  return same(view, coherentView(classroom, next));
}

/** A view that shows nothing that is gone: somebody else may have taken it away. */
export function coherentView(classroom: Classroom, view: View): View {
  const arrangement = arrangementShown(classroom, view);
  const isPiece = (id: string): boolean => arrangement.pieces.some((piece) => piece.id === id);
  const shelf = view.frontOf && arrangement.pieces.find((piece) => piece.id === view.frontOf?.piece);
  return same(view, {
    ...view,
    arrangement: arrangement.id,
    chosen: view.chosen && isThere(classroom, view.chosen, isPiece) ? view.chosen : null,
    frontOf: shelf ? view.frontOf : null,
    laid: view.laid !== arrangement.id && classroom.arrangements.some(({ id }) => id === view.laid) ? view.laid : null,
    material: classroom.materials.some((material) => material.id === view.material) ? view.material : null,
    preview: view.preview && isPiece(view.preview.piece) ? view.preview : null,
  });
}

function isThere(classroom: Classroom, chosen: NonNullable<View['chosen']>, isPiece: (id: string) => boolean): boolean {
  const has = (list: readonly { readonly id: string }[]): boolean => list.some(({ id }) => id === chosen.id);
  switch (chosen.kind) {
    case 'piece':
      return isPiece(chosen.id);
    case 'fixture':
      return has(classroom.room.fixtures);
    case 'opening':
      return has(classroom.room.openings);
    case 'corner':
      return has(classroom.room.corners);
    case 'wall':
      // A wall goes by the corner it starts at, with or without the mark "wall:".
      return classroom.room.corners.some(({ id }) => id === chosen.id || `wall:${id}` === chosen.id);
    case 'tray':
      return has(classroom.materials);
  }
}

function same(before: View, now: View): View {
  const keys = Object.keys(now) as (keyof View)[];
  return keys.every((key) => before[key] === now[key]) ? before : now;
}
