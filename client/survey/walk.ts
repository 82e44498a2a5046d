import { traverse } from '#model/geometry/traverse.ts';
import { add, distance, length as longOf, type Point, sub, turn as turned } from '#model/geometry/vec.ts';
import { fitSurvey, type SurveyFit, type TapedDiagonal } from '#model/measures/surveyFit.ts';
import type { Draft, DraftWall } from './draft.ts';

/** What the walk so far comes to. The first corner at the origin, the first wall along +x; mm, degrees. */
export interface Walk {
  /** Walls without the blank ones at the end. */
  readonly walls: readonly DraftWall[];
  /** Corners of the walk as typed, from the first; the last is where the last wall ends. Stops at a wall without a length. */
  readonly chain: readonly Point[];
  /** Every wall has a length. */
  readonly isWhole: boolean;
  /** Degrees to the right that the turns add up to. */
  readonly turns: number;
  /** What they are off a full turn. */
  readonly turnsOff: number;
  /** The walk has come round: whole, and the turns make a full turn. */
  readonly isRound: boolean;
  /** The walk keeps the walls on its right, so the room is drawn the other way about. */
  readonly isLeftward: boolean;
  readonly perimeter: number;
  /** From where the walk began to where it ended; null: it has not come round. */
  readonly open: Point | null;
  readonly fit: SurveyFit | null;
  /** How it is spread: over the lengths alone, the corners square; each corner by the compass rule; or by least squares. */
  readonly how: 'lengths' | 'compass' | 'squares';
  /** Corners with the misclosure spread; null: nothing to spread, or not to be told. */
  readonly spread: readonly Point[] | null;
  /** Index of the wall that runs along the misclosure, where just one does. */
  readonly suspect: number | null;
}

export const lengthOf = ({ length, drawn }: DraftWall): number | null => length ?? drawn;
export const isByDiagonals = ({ bend }: DraftWall): boolean => bend === 'right-diagonals' || bend === 'left-diagonals';

/** Degrees clockwise after a wall; for an angle that diagonals tell, the side it bends to. */
export function typedTurn({ bend, angle }: DraftWall): number {
  switch (bend) {
    case 'right':
      return 90;
    case 'left':
      return -90;
    case 'straight':
      return 0;
    case 'angle':
      return angle;
    case 'right-diagonals':
      return Math.abs(angle) || 90;
    case 'left-diagonals':
      return -(Math.abs(angle) || 90);
  }
}

/** Share of the perimeter beyond which a misclosure is a mistake, as the check has it. */
export const SPREADABLE = 0.01;
/** Degrees a typed turn may be off, as the check has it. */
const TURN_ERROR = 1;

export function walkOf(draft: Draft): Walk {
  const walls = withoutBlankEnd(draft.walls);
  const lengths = walls.map(lengthOf);
  const isWhole = walls.length >= 3 && lengths.every((length) => length !== null);
  const diagonals = tapedDiagonals(draft, walls);
  const hasFree = walls.some(isByDiagonals);
  const missing = lengths.filter((length) => length === null).length;
  const typed = walls.map(typedTurn);
  const typedSum = typed.reduce((sum, turn) => sum + turn, 0);
  const mayFit = walls.length >= 3 && (diagonals.length > 0 || hasFree || missing > 0);
  // Angles that diagonals tell make up what is left of the full turn.
  const comesRound = hasFree || Math.abs(offTurn(typedSum)) <= TURN_ERROR * walls.length + 1e-9;
  const fit =
    mayFit && comesRound && missing <= 2
      ? fitSurvey(
          walls.map((wall) => ({ length: lengthOf(wall), turn: typedTurn(wall), isTurnFree: isByDiagonals(wall) })),
          diagonals,
        )
      : null;
  const holds = fit !== null && fit.loose.length === 0;
  const turns = typed.map((turn, i) => (holds && walls[i] && isByDiagonals(walls[i]) ? (fit.turns[i]?.value ?? turn) : turn));
  const sum = turns.reduce((total, turn) => total + turn, 0);
  const isRound = isWhole && comesRound && (!hasFree || holds);
  const walked = isRound ? traverse(walls.map((wall, i) => ({ length: lengthOf(wall) ?? 0, turn: turns[i] ?? 0 }))) : null;
  const how = holds ? 'squares' : walked?.squared ? 'lengths' : 'compass';
  return {
    walls,
    chain: walked?.measured ?? chainOf(lengths, turns),
    isWhole,
    turns: sum,
    turnsOff: offTurn(sum),
    isRound,
    isLeftward: sum < 0,
    perimeter: lengths.reduce((total: number, length) => total + (length ?? 0), 0),
    open: walked?.misclosure ?? null,
    fit,
    how,
    spread: holds && comesRound ? fit.corners : (walked?.squared ?? walked?.adjusted ?? null),
    suspect: walked?.suspect ?? null,
  };
}

const offTurn = (sum: number): number => sum - (sum < 0 ? -360 : 360);

function withoutBlankEnd(walls: readonly DraftWall[]): readonly DraftWall[] {
  let count = walls.length;
  while (count > 0 && lengthOf(walls[count - 1] as DraftWall) === null) count--;
  return walls.slice(0, count);
}

function tapedDiagonals(draft: Draft, walls: readonly DraftWall[]): TapedDiagonal[] {
  const index = new Map(walls.map(({ corner }, i) => [corner, i]));
  return draft.diagonals.flatMap(({ from, to, length }) => {
    const [a, b] = [index.get(from), index.get(to)];
    return a === undefined || b === undefined || a === b || length === null ? [] : [{ from: a, to: b, length }];
  });
}

function chainOf(lengths: readonly (number | null)[], turns: readonly number[]): Point[] {
  const chain: Point[] = [{ x: 0, y: 0 }];
  let heading = 0;
  for (const [i, length] of lengths.entries()) {
    if (length === null) break;
    chain.push(add(chain[chain.length - 1] as Point, turned({ x: length, y: 0 }, heading)));
    heading += turns[i] ?? 0;
  }
  return chain;
}

/** mm that spreading adds to each wall; null: it was not taped, or nothing is spread. */
export function changesOf({ walls, spread, how, chain }: Walk): (number | null)[] {
  const changes = walls.map((wall, i) => {
    const [a, b] = [spread?.[i], spread?.[(i + 1) % walls.length]];
    const length = lengthOf(wall);
    return a && b && length !== null ? distance(a, b) - length : null;
  });
  if (how !== 'lengths') return changes;
  // In whole mm that add up to the misclosure along each direction.
  const sums = [0, 0];
  return changes.map((change, i) => {
    const [a, b] = [chain[i], chain[i + 1]];
    if (change === null || !a || !b) return change;
    const axis = Math.abs(b.x - a.x) > Math.abs(b.y - a.y) ? 0 : 1;
    const before = sums[axis] ?? 0;
    sums[axis] = before + Math.abs(change);
    return Math.sign(change) * (Math.round(before + Math.abs(change) + 1e-6) - Math.round(before + 1e-6));
  });
}

/** Degrees to the right that spreading by the compass rule turns each wall; null: it turns none, or the turns are fitted. */
export function turnedOf({ walls, spread, how, chain }: Walk): (number | null)[] {
  const heading = (a: Point, b: Point): number => (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
  return walls.map((_, i) => {
    const [a, b, p, q] = [chain[i], chain[i + 1], spread?.[i], spread?.[(i + 1) % walls.length]];
    if (how !== 'compass' || !a || !b || !p || !q) return null;
    const by = heading(p, q) - heading(a, b);
    return by - 360 * Math.round(by / 360);
  });
}

/** mm and degrees from which a change is said at all */
const SAID = { length: 0.5, turn: 0.05 } as const;

/** Spreading would change something: the walk is open, or the diagonals make walls or turns other than typed. */
export function hasToSpread({ how, open, fit, spread }: Walk): boolean {
  if (!spread) return false;
  const isOpen = open !== null && longOf(open) >= 1;
  if (how !== 'squares') return isOpen;
  if (!fit || fit.redundancy <= 0) return false;
  const isChanged = (by: number | null, least: number): boolean => by !== null && Math.abs(by) >= least;
  return (
    isOpen || fit.walls.some(({ change }) => isChanged(change, SAID.length)) || fit.turns.some(({ change }) => isChanged(change, SAID.turn))
  );
}

/** More than a tape is wrong by: something was typed or taped wrong, and spreading would only hide it. */
export function isMistake({ open, perimeter, fit }: Walk): boolean {
  return fit?.misfit != null || (open !== null && longOf(open) > SPREADABLE * perimeter);
}

/** Corners as they would be laid out now, as many as walls; null: the walk has not come round. */
export function layoutOf(walk: Walk, isSpread: boolean): readonly Point[] | null {
  const { walls, chain, spread, isRound } = walk;
  if (isSpread) return spread;
  if (isRound) return chain.slice(0, walls.length);
  // A wall that was not taped has its length from the others.
  return spread && !walk.isWhole ? spread : null;
}

/** The same corners with corner `index` at a place and the wall after it along a heading (degrees). */
export function laidAt(corners: readonly Point[], index: number, place: Point, heading: number): Point[] {
  const origin = corners[index] ?? { x: 0, y: 0 };
  const next = corners[(index + 1) % corners.length] ?? origin;
  const run = sub(next, origin);
  const by = heading - (Math.atan2(run.y, run.x) * 180) / Math.PI;
  return corners.map((corner) => {
    const { x, y } = add(place, turned(sub(corner, origin), by));
    return { x: tenth(x), y: tenth(y) };
  });
}

/** No tape is finer, and a file knows no zero with a sign. */
const tenth = (mm: number): number => Math.round(mm * 10) / 10 + 0;
