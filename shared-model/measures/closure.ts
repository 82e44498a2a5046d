import { type Traverse, traverse } from '../geometry/traverse.ts';
import { add, distance, type Point, sub, turn } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import type { Corner, Room } from '../schema/types.ts';
import { fitSurvey } from './surveyFit.ts';

/** A diagonal as taped against the one that the walls make. mm. */
interface Diagonal {
  readonly from: string;
  readonly to: string;
  readonly taped: number;
  readonly made: number;
}

/** The walls as they were taped, one after the other. */
export interface Closure {
  /** Corners whose wall was not taped; then there is no traverse. */
  readonly missing: readonly string[];
  /** Corners that the tape names and the room does not have. */
  readonly gone: readonly string[];
  readonly traverse: Traverse | null;
  /**
   * Corners of the room with the misclosure spread: over the lengths alone where every turn is square, else by the compass rule,
   * with diagonals by least squares. The first corner and the direction of the first wall stay.
   */
  readonly spread: readonly Corner[];
  /** Farthest that a corner lies from where the spread puts it, or where the compass rule does, mm. */
  readonly off: number;
  readonly diagonals: readonly Diagonal[];
}

/** Null: nothing was taped. */
export function measureClosure(scene: Scene): Closure | null {
  const { corners, survey } = scene.classroom.room;
  if (!survey || survey.walls.length + survey.diagonals.length === 0) return null;
  const byCorner = new Map(survey.walls.map((wall) => [wall.from, wall]));
  const ids = new Set(corners.map((corner) => corner.id));
  const named = [...byCorner.keys(), ...survey.diagonals.flatMap(({ from, to }) => [from, to])];
  const gone = [...new Set(named.filter((id) => !ids.has(id)))];
  const missing = survey.walls.length === 0 ? [] : corners.filter((corner) => !byCorner.has(corner.id)).map((corner) => corner.id);
  const courses = corners.flatMap((corner) => byCorner.get(corner.id) ?? []);
  const walked = courses.length === corners.length ? traverse(courses) : null;
  const byCompass = walked ? layOut(corners, walked.adjusted) : corners;
  const byRule = walked?.squared ? layOut(corners, walked.squared) : byCompass;
  const fitted = walked && fittedCorners(corners, courses, survey.diagonals);
  const spread = fitted ?? byRule;
  // Diagonals check the walls alone, until the drawing was laid out with them.
  const checked = fitted && offBy(corners, fitted) <= LAID_OUT ? fitted : byRule;
  const at = new Map(checked.map((corner) => [corner.id, corner]));
  const diagonals = survey.diagonals.flatMap(({ from, to, length }): Diagonal[] => {
    const [a, b] = [at.get(from), at.get(to)];
    return a && b ? [{ from, to, taped: length, made: distance(a, b) }] : [];
  });
  return {
    missing,
    gone,
    traverse: walked,
    spread,
    off: Math.min(offBy(corners, spread), fitted ? Infinity : offBy(corners, byCompass)),
    diagonals,
  };
}

/** mm: corners this near to where the adjustment puts them were laid out by it. */
const LAID_OUT = 1;
const offBy = (corners: readonly Corner[], spread: readonly Corner[]): number =>
  Math.max(0, ...corners.map((corner, i) => distance(corner, spread[i] ?? corner)));

type Survey = NonNullable<Room['survey']>;

/** By least squares, where there are diagonals and no measurement among them that fits badly; else null. */
function fittedCorners(corners: readonly Corner[], walls: Survey['walls'], taped: Survey['diagonals']): Corner[] | null {
  const index = new Map(corners.map(({ id }, i) => [id, i]));
  const diagonals = taped.flatMap(({ from, to, length }) => {
    const [a, b] = [index.get(from), index.get(to)];
    return a === undefined || b === undefined || a === b ? [] : [{ from: a, to: b, length }];
  });
  if (diagonals.length === 0) return null;
  const fit = fitSurvey(
    walls.map(({ length, turn, turnBy }) => ({ length, turn, isTurnFree: turnBy === 'diagonals' })),
    diagonals,
  );
  return fit && fit.loose.length === 0 && !fit.misfit ? layOut(corners, fit.corners) : null;
}

/** The adjusted corners at the drawn first corner, turned so that the first wall runs as it is drawn. */
function layOut(corners: readonly Corner[], adjusted: readonly Point[]): Corner[] {
  const [first, second] = corners;
  const along = adjusted[1];
  if (!first || !second || !along) return [...corners];
  const heading = (p: Point): number => (Math.atan2(p.y, p.x) * 180) / Math.PI;
  const by = heading(sub(second, first)) - heading(along);
  return corners.map((corner, i) => {
    const moved = add(first, turn(adjusted[i] ?? { x: 0, y: 0 }, by));
    return { ...corner, x: roundTenth(moved.x), y: roundTenth(moved.y) };
  });
}

/** Corners come in tenths of a mm: no tape is finer. */
const roundTenth = (mm: number): number => Math.round(mm * 10) / 10;
