import { type Traverse, traverse } from '../geometry/traverse.ts';
import { add, distance, type Point, sub, turn } from '../geometry/vec.ts';
import type { Scene } from '../scene/types.ts';
import type { Corner } from '../schema/types.ts';

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
  /** Corners of the room with the misclosure spread; the first corner and the direction of the first wall stay. */
  readonly spread: readonly Corner[];
  /** Farthest that a corner lies from where the spread puts it, mm. */
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
  const spread = walked ? layOut(corners, walked) : corners;
  const at = new Map(spread.map((corner) => [corner.id, corner]));
  const diagonals = survey.diagonals.flatMap(({ from, to, length }): Diagonal[] => {
    const [a, b] = [at.get(from), at.get(to)];
    return a && b ? [{ from, to, taped: length, made: distance(a, b) }] : [];
  });
  const off = Math.max(0, ...corners.map((corner, i) => distance(corner, spread[i] ?? corner)));
  return { missing, gone, traverse: walked, spread, off, diagonals };
}

/** The adjusted corners at the drawn first corner, turned so that the first wall runs as it is drawn. */
function layOut(corners: readonly Corner[], { adjusted }: Traverse): Corner[] {
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
