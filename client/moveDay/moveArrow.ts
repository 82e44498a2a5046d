import { add, distance, type Point, scale, sub, unit } from '#model/geometry/vec.ts';
import type { Day, DayStep } from './dayOf.ts';

export interface MoveArrow {
  /** In the lengths of the drawing: from where the piece stands before the step to where it stands after; one point where that is nearly the same place. */
  readonly points: readonly Point[];
  /** mm on the floor; null: no arrow is drawn */
  readonly long: number | null;
}

interface Look {
  readonly at: (p: Point) => Point;
  /** How far before the middle of the new place the head stands, so that the name of the piece stays free. */
  readonly before: number;
  /** What is shorter is no arrow. */
  readonly least: number;
}

/** The arrow of a step; null: nothing is moved. */
export function moveArrow({ plan }: Day, { step }: Pick<DayStep, 'step'>, { at, before, least }: Look): MoveArrow | null {
  if (step.unit === null) return null;
  const moved = plan.units[step.unit];
  const start = step.does === 'back' ? (plan.sequence.places.get(step.unit)?.[0] ?? moved?.from[0]) : moved?.from[0];
  const end = step.stands;
  const only = start ?? end;
  if (!only) return null;
  const a = at(only.center);
  if (!start || !end) return { points: [a], long: null };
  const centre = at(end.center);
  const far = distance(a, centre) - before;
  if (far <= least) return { points: [a], long: null };
  const b = add(a, scale(unit(sub(centre, a)), far));
  const isBent = step.path?.how === 'slide' && step.path.legs.length === 2;
  const points = isBent ? [a, at(add(start.center, step.path.legs[0] as Point)), b] : [a, b];
  return { points, long: distance(start.center, end.center) };
}
