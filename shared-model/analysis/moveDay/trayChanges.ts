import type { Scene, SceneTray } from '../../scene/types.ts';
import type { Side } from '../../schema/types.ts';

/** Where a tray stands: on which side and board of which piece; level null: its top. */
export interface TrayPlace {
  /** The piece's id in the earlier arrangement where it is there, else in the later one. */
  readonly piece: string;
  readonly side: Side;
  readonly level: string | null;
}

/** A tray that another one has to be looked for by; null: on the table. */
export interface TrayChange {
  readonly material: string;
  readonly from: TrayPlace | null;
  readonly to: TrayPlace | null;
  /** order: it stays on its board and changes places with others there. */
  readonly kind: 'shelf' | 'board' | 'order' | 'from-table' | 'to-table';
}

/**
 * Trays that stand on another shelf, another board, or elsewhere in the row of their board. A tray that only moves
 * along to make room is none.
 * @param earlierId the id in the earlier arrangement of a piece of the later one
 */
export function trayChanges(before: Scene, after: Scene, earlierId: (piece: string) => string): TrayChange[] {
  const same = (id: string): string => id;
  const changes: TrayChange[] = [];
  for (const { id } of before.classroom.materials) {
    const from = placeOf(before.stands.get(id), same);
    const to = placeOf(after.stands.get(id), earlierId);
    const kind = kindOf(from, to);
    if (kind) changes.push({ material: id, from, to, kind });
  }
  return [...changes, ...reordered(before, after, earlierId)];
}

export function placeOf(tray: SceneTray | undefined, idOf: (piece: string) => string): TrayPlace | null {
  if (!tray || tray.placement.piece === null) return null;
  // A tray on the top without a board says no level, whatever it once said.
  const level = tray.board ? (tray.board.level?.id ?? null) : tray.placement.level;
  return { piece: idOf(tray.placement.piece), side: tray.placement.side, level };
}

function kindOf(from: TrayPlace | null, to: TrayPlace | null): TrayChange['kind'] | null {
  if (!from && !to) return null;
  if (!from) return 'from-table';
  if (!to) return 'to-table';
  if (from.piece !== to.piece) return 'shelf';
  return from.side !== to.side || from.level !== to.level ? 'board' : null;
}

/** On each board the fewest trays that change places with the others: all but the longest run that keeps its order. */
function reordered(before: Scene, after: Scene, earlierId: (piece: string) => string): TrayChange[] {
  const rankBefore = new Map<string, number>();
  for (const { boards } of before.sides)
    for (const { trays } of boards) for (const [i, tray] of trays.entries()) rankBefore.set(tray.material.id, i);
  return after.sides.flatMap(({ boards }) =>
    boards.flatMap(({ trays }) => {
      const stay = trays.filter((tray) => {
        const from = placeOf(before.stands.get(tray.material.id), (id) => id);
        return from !== null && kindOf(from, placeOf(tray, earlierId)) === null && before.stands.get(tray.material.id)?.board;
      });
      const keep = longestRising(stay.map((tray) => rankBefore.get(tray.material.id) ?? 0));
      return stay.flatMap((tray, i): TrayChange[] => {
        if (keep.has(i)) return [];
        const place = placeOf(tray, earlierId);
        return [{ material: tray.material.id, from: place, to: place, kind: 'order' }];
      });
    }),
  );
}

/** Indices of a longest strictly rising run of a list without repeats. */
function longestRising(values: readonly number[]): Set<number> {
  const best = values.map(() => 1);
  const back = values.map(() => -1);
  let end = -1;
  for (let i = 0; i < values.length; i++) {
    for (let j = 0; j < i; j++) {
      if ((values[j] as number) >= (values[i] as number) || (best[j] as number) + 1 <= (best[i] as number)) continue;
      best[i] = (best[j] as number) + 1;
      back[i] = j;
    }
    if (end === -1 || (best[i] as number) > (best[end] as number)) end = i;
  }
  const keep = new Set<number>();
  for (let i = end; i >= 0; i = back[i] as number) keep.add(i);
  return keep;
}
