import { add, dot, length, type Point, scale, sub, unit } from './vec.ts';

/** One side of a traverse. */
export interface Course {
  /** mm */
  readonly length: number;
  /** degrees clockwise, from this side to the next */
  readonly turn: number;
}

/** A closed traverse as it was measured and as the compass rule adjusts it. mm, plan axes. */
export interface Traverse {
  /** Corners as measured, the first at the origin; the last one is where the last side ends, the first again if it closes. */
  readonly measured: readonly Point[];
  /** From the first corner to where the last side ends. */
  readonly misclosure: Point;
  readonly perimeter: number;
  /** Sum of the turns, and what it is more than a full turn (to the left: -360), degrees. */
  readonly turned: number;
  readonly turnError: number;
  /** Corners with the misclosure spread over the sides in proportion to their lengths; as many as sides. */
  readonly adjusted: readonly Point[];
  /**
   * Where every turn is square: corners with the misclosure spread so that they stay square (transit rule): along each of the two
   * directions over its sides, in proportion to their lengths. Null: a turn is not square, or they make no full turn.
   */
  readonly squared: readonly Point[] | null;
  /** Index of the side that runs along the misclosure, where one does and no other: an error in its length looks so. */
  readonly suspect: number | null;
}

/** Degrees: a side this near to the misclosure's direction runs along it. */
const ALONG = 5;

/**
 * Walks round the sides, the first along +x. The error of the turns is first shared out evenly over them; then the
 * compass rule (Bowditch) moves each corner by the misclosure times the share of the perimeter walked up to it.
 */
export function traverse(courses: readonly Course[]): Traverse {
  const turned = courses.reduce((total, course) => total + course.turn, 0);
  const turnError = turned - (turned < 0 ? -360 : 360);
  const perimeter = courses.reduce((total, course) => total + course.length, 0);
  const measured: Point[] = [{ x: 0, y: 0 }];
  const steps: Point[] = [];
  let heading = 0;
  for (const course of courses) {
    const angle = (heading * Math.PI) / 180;
    const step = { x: course.length * Math.cos(angle), y: course.length * Math.sin(angle) };
    steps.push(step);
    measured.push(add(measured[measured.length - 1] as Point, step));
    heading += course.turn - turnError / courses.length;
  }
  const misclosure = measured[measured.length - 1] as Point;
  let walked = 0;
  const adjusted = courses.map((course, i) => {
    const corner = sub(measured[i] as Point, scale(misclosure, walked / perimeter));
    walked += course.length;
    return corner;
  });
  const isSquare = courses.every(({ turn }) => Math.abs(turn / 90 - Math.round(turn / 90)) < 1e-9) && Math.abs(turnError) < 1e-9;
  const squared = isSquare ? byTransit(steps, misclosure) : null;
  return { measured, misclosure, perimeter, turned, turnError, adjusted, squared, suspect: sideAlong(steps, misclosure) };
}

/**
 * The transit rule: the misclosure in latitude is spread in proportion to the latitudes, that in departure to the departures
 * (stated so in surveying textbooks, from memory). Sides along the axes keep their direction by it.
 */
function byTransit(steps: readonly Point[], misclosure: Point): Point[] {
  const total = (axis: 'x' | 'y'): number => steps.reduce((sum, step) => sum + Math.abs(step[axis]), 0);
  // Without a side that way there is nothing to spread over, and nothing open that way either.
  const per = { x: misclosure.x / (total('x') || 1), y: misclosure.y / (total('y') || 1) };
  let corner: Point = { x: 0, y: 0 };
  return steps.map((step) => {
    const here = corner;
    corner = { x: here.x + step.x - per.x * Math.abs(step.x), y: here.y + step.y - per.y * Math.abs(step.y) };
    return here;
  });
}

function sideAlong(steps: readonly Point[], misclosure: Point): number | null {
  if (length(misclosure) === 0) return null;
  const along = unit(misclosure);
  const found = steps.flatMap((step, i) => (Math.abs(dot(unit(step), along)) >= Math.cos((ALONG * Math.PI) / 180) ? [i] : []));
  return found.length === 1 ? (found[0] ?? null) : null;
}
