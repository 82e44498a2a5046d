import { pickArrangement } from '#model/scene/build.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import type { Chosen, View } from './types.ts';

const NONE: readonly string[] = [];

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
    alsoChosen: NONE,
    frontOf: null,
    material: null,
    finding: null,
    compared: null,
    laid: null,
    preview: null,
    draft: null,
  };
}

/** The view after a change of it: choosing a shelf shows its front. The same object when nothing changes. */
export function changedView(classroom: Classroom, view: View, change: Partial<View>): View {
  const next = { ...view, ...change };
  const chosen = change.chosen;
  // Whoever chooses one thing chooses it alone.
  if (chosen !== undefined && change.alsoChosen === undefined) next.alsoChosen = NONE;
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
  const set = coherentSet(classroom, view, isPiece);
  const shelf = view.frontOf && arrangement.pieces.find((piece) => piece.id === view.frontOf?.piece);
  return same(view, {
    ...view,
    arrangement: arrangement.id,
    ...set,
    frontOf: shelf ? view.frontOf : null,
    laid: view.laid !== arrangement.id && classroom.arrangements.some(({ id }) => id === view.laid) ? view.laid : null,
    material: classroom.materials.some((material) => material.id === view.material) ? view.material : null,
    preview: view.preview && isPiece(view.preview.piece) ? view.preview : null,
  });
}

/** What is chosen, without what is gone; when the first is gone the next takes its place. */
function coherentSet(classroom: Classroom, view: View, isPiece: (id: string) => boolean): Pick<View, 'chosen' | 'alsoChosen'> {
  const isFixture = (id: string): boolean => classroom.room.fixtures.some((fixture) => fixture.id === id);
  const chosen = view.chosen && isThere(classroom, view.chosen, isPiece) ? view.chosen : null;
  const canBeSeveral = view.chosen?.kind === 'piece' || view.chosen?.kind === 'fixture';
  if (view.alsoChosen.length === 0 || !canBeSeveral) return { chosen, alsoChosen: NONE };
  const also = view.alsoChosen.filter((id) => id !== chosen?.id && (isPiece(id) || isFixture(id)));
  const kept = also.length === view.alsoChosen.length ? view.alsoChosen : also.length === 0 ? NONE : also;
  if (chosen) return { chosen, alsoChosen: kept };
  const [first, ...rest] = kept;
  if (first === undefined) return { chosen: null, alsoChosen: NONE };
  const next: Chosen = { kind: isPiece(first) ? 'piece' : 'fixture', id: first };
  return { chosen: next, alsoChosen: rest.length === 0 ? NONE : rest };
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
