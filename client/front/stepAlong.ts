import type { Standing } from './makeRoom.ts';
import { onBoard, overlaps } from './snap.ts';

export interface Stepped {
  /** Trays that change place (mm); empty when there is nowhere to go. */
  readonly places: ReadonlyMap<string, number>;
  readonly changedWith: string | null;
}

/**
 * One press of an arrow: a tray slides `by` mm along its board, stops against its neighbour,
 * and with the next press changes places with it. mm, right is positive.
 */
export function stepAlong(trays: readonly Standing[], id: string, boardWidth: number, by: number): Stepped {
  const moving = trays.find((tray) => tray.id === id);
  if (!moving || by === 0) return { places: new Map(), changedWith: null };
  const isRight = by > 0;
  const neighbour = nextTo(trays, moving, isRight);
  const wanted = onBoard(moving.x + by, moving.width, boardWidth);
  const limit = neighbour ? (isRight ? neighbour.x - moving.width : neighbour.x + neighbour.width) : wanted;
  const isStopped = neighbour !== null && (isRight ? wanted > limit : wanted < limit);
  const to = isStopped ? limit : wanted;
  const isAway = isRight ? to > moving.x + 0.5 : to < moving.x - 0.5;
  if (isAway) return { places: new Map([[id, to]]), changedWith: null };
  if (!isStopped || !neighbour) return { places: new Map(), changedWith: null };
  return { places: changePlaces(moving, neighbour, isRight), changedWith: neighbour.id };
}

/** The nearest tray on that side that does not overlap already: one that does is no wall to get free of. */
function nextTo(trays: readonly Standing[], moving: Standing, isRight: boolean): Standing | null {
  const ahead = trays.filter(
    (tray) => tray.id !== moving.id && !overlaps(tray, moving) && (isRight ? tray.x > moving.x : tray.x < moving.x),
  );
  ahead.sort((p, q) => (isRight ? p.x - q.x : q.x + q.width - (p.x + p.width)));
  return ahead[0] ?? null;
}

/** Two neighbours swap within the stretch they fill together, so that nobody else has to move. */
function changePlaces(moving: Standing, other: Standing, isRight: boolean): Map<string, number> {
  const [left, last] = isRight ? [moving, other] : [other, moving];
  return new Map([
    [last.id, left.x],
    [left.id, last.x + last.width - left.width],
  ]);
}
