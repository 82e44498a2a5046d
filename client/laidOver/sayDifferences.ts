import { type PieceChange, pairPieces } from '#model/analysis/moveDay/differences.ts';
import { trayChanges } from '#model/analysis/moveDay/trayChanges.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Arrangement, Classroom, Piece } from '#model/schema/types.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { moveNames } from '../moveDay/names.ts';
import { sayLegs, sayTurned } from '../moveDay/sayMove.ts';
import { sayCount } from '../text/sayCount.ts';
import { capital, sayList } from '../text/sayList.ts';
import { laidChanges } from './laidChanges.ts';

/** One thing that differs, in words. */
export interface Difference {
  readonly id: string;
  readonly text: string;
  /** Its id in the shown arrangement; null: it is not there. */
  readonly piece: string | null;
}

/** What differs in the shown arrangement from the one that lies under it. */
export function sayDifferences(classroom: Classroom, under: Arrangement, shown: Arrangement): Difference[] {
  const { units } = classroom.display;
  const ids = new Map(
    pairPieces(under.pieces, shown.pieces).flatMap(({ before, after }) => (before && after ? [[after.id, before.id]] : [])),
  );
  const earlierId = (piece: string): string => ids.get(piece) ?? piece;
  const names = moveNames(classroom, under, shown, earlierId);
  const changes = laidChanges(under, shown);
  const withTable = (change: PieceChange): boolean => {
    const table = change.after?.table ?? change.before?.table ?? null;
    return table !== null && changes.some(({ id, by, before, after }) => id === table && (by > 0 || !before || !after));
  };
  const pieces = changes
    .filter((change) => !withTable(change))
    .map((change): Difference => {
      const { id, before, after, by, turned, isExchanged, hasOtherBoards } = change;
      const name = capital(names.name(id));
      const piece = after?.id ?? null;
      if (!after) return { id, piece, text: `${name} is not here` };
      if (!before) return { id, piece, text: `${name} is new` };
      const parts = [
        by > 0 ? sayLegs({ x: after.x - before.x, y: after.y - before.y }, units) : '',
        sayTurned(turned),
        isExchanged ? saySizes(before, after, units) : '',
        hasOtherBoards ? 'other boards' : '',
      ];
      return { id, piece, text: `${name}: ${sayList(parts.filter(Boolean))}` };
    });
  const trays = trayChanges(buildScene(classroom, under.id), buildScene(classroom, shown.id), earlierId);
  if (trays.length === 0) return pieces;
  return [
    ...pieces,
    { id: 'trays', piece: null, text: `${capital(sayCount(trays.length, 'tray'))} in another place: see the Move day sheet` },
  ];
}

/** "0.90 m long instead of 1.20 m": only what differs. */
function saySizes(before: Piece, after: Piece, units: LengthUnits): string {
  const words = { width: 'long', depth: 'deep', height: 'high' } as const;
  const said = (['width', 'depth', 'height'] as const).flatMap((key) => {
    const [was, now] = [before[key], after[key]];
    return was === null || now === null || was === now
      ? []
      : [`${sayLength(now, units)} ${words[key]} instead of ${sayLength(was, units)}`];
  });
  return sayList(said);
}
