import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import type { Point } from './vec.ts';

/**
 * What was measured between points, by their index. distance: mm. turn: degrees clockwise from the walk `from`-`at` to the
 * walk `at`-`to`. sigma: standard deviation of the measurement, in the same unit.
 */
export type Observation =
  | { readonly kind: 'distance'; readonly from: number; readonly to: number; readonly value: number; readonly sigma: number }
  | {
      readonly kind: 'turn';
      readonly from: number;
      readonly at: number;
      readonly to: number;
      readonly value: number;
      readonly sigma: number;
    };

/** One measurement after the adjustment. */
interface Residual {
  /** What the adjusted points make it; mm or degrees. */
  readonly fitted: number;
  /** fitted - measured */
  readonly change: number;
  /** Share of the measurement that the others check, 0 to 1. */
  readonly redundancy: number;
  /** change over its own standard deviation (Baarda's w); null: nothing else checks it. */
  readonly standardised: number | null;
}

export interface Adjusted {
  readonly points: readonly Point[];
  readonly residuals: readonly Residual[];
  /** Sum of the squared changes, each over its sigma. */
  readonly misfit: number;
  /** Measurements more than it takes. */
  readonly redundancy: number;
  /** Points that the measurements leave free to move. */
  readonly loose: readonly number[];
  /** Measurements whose errors cannot be told from one of the given measurement, itself left out. */
  alike(index: number): number[];
}

const MOST_STEPS = 80;
/** mm: steps shorter than this end the search */
const SETTLED = 1e-7;
/** Enough to solve for a point that nothing holds. */
const LEAST_DAMPING = 1e-9;
/** Of the largest eigenvalue: below it a direction is not held by any measurement. */
const UNHELD = 1e-9;
/** Redundancy and correlation within rounding of nothing and of the same. */
const CHECKED = 1e-6;
const ALIKE = 0.995;

/**
 * Points by least squares from distances and turns: Gauss-Newton with the damping of Levenberg and Marquardt.
 * A coordinate that is held stays as it was given: three of them, of two points, hold a drawing to the sheet.
 */
export function adjustNetwork(
  start: readonly Point[],
  held: readonly { readonly x: boolean; readonly y: boolean }[],
  observations: readonly Observation[],
): Adjusted {
  const unknowns = start.flatMap((_, i) => (['x', 'y'] as const).flatMap((axis) => (held[i]?.[axis] ? [] : [{ point: i, axis }])));
  const columns = new Map(unknowns.map(({ point, axis }, column) => [`${point}${axis}`, column]));
  let points = start.map(({ x, y }) => ({ x, y }));
  let now = linearised(points, observations, columns);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS && unknowns.length > 0; step++) {
    const normal = now.rows.transpose().mmul(now.rows);
    const right = now.rows.transpose().mmul(now.misses);
    const damped = normal.clone();
    for (let i = 0; i < unknowns.length; i++) damped.set(i, i, normal.get(i, i) * (1 + damping) || 1);
    const move = solve(damped, right);
    if (!move.to1DArray().every(Number.isFinite)) break;
    const moved = points.map(({ x, y }, i) => ({ x: x + at(move, columns.get(`${i}x`)), y: y + at(move, columns.get(`${i}y`)) }));
    const next = linearised(moved, observations, columns);
    const longest = Math.max(...move.to1DArray().map(Math.abs));
    if (next.misfit <= now.misfit) {
      points = moved;
      now = next;
      damping = Math.max(damping / 10, LEAST_DAMPING);
    } else damping *= 10;
    if (longest < SETTLED || damping > 1e12) break;
  }
  return judged(points, now, observations, unknowns);
}

const at = (column: Matrix, row: number | undefined): number => (row === undefined ? 0 : column.get(row, 0));

interface Linearised {
  /** Derivatives over sigma, a row a measurement, a column an unknown. */
  readonly rows: Matrix;
  /** measured - made, over sigma */
  readonly misses: Matrix;
  readonly misfit: number;
}

function linearised(points: readonly Point[], observations: readonly Observation[], columns: ReadonlyMap<string, number>): Linearised {
  const rows = Matrix.zeros(observations.length, columns.size);
  const misses = Matrix.zeros(observations.length, 1);
  observations.forEach((observation, row) => {
    const { made, slopes } = modelOf(points, observation);
    for (const { point, x, y } of slopes) {
      const [columnX, columnY] = [columns.get(`${point}x`), columns.get(`${point}y`)];
      if (columnX !== undefined) rows.set(row, columnX, rows.get(row, columnX) + x / observation.sigma);
      if (columnY !== undefined) rows.set(row, columnY, rows.get(row, columnY) + y / observation.sigma);
    }
    misses.set(row, 0, missOf(observation, made) / observation.sigma);
  });
  return { rows, misses, misfit: misses.to1DArray().reduce((sum, miss) => sum + miss * miss, 0) };
}

const missOf = ({ kind, value }: Observation, made: number): number => (kind === 'turn' ? halfTurn(value - made) : value - made);
/** Degrees from -180 to 180. */
const halfTurn = (degrees: number): number => degrees - 360 * Math.round(degrees / 360);

interface Slope extends Point {
  readonly point: number;
}

/** What the points make of a measurement, and how that changes with each of them. */
function modelOf(points: readonly Point[], observation: Observation): { made: number; slopes: Slope[] } {
  if (observation.kind === 'distance') {
    const { long, x, y } = run(points, observation.from, observation.to);
    const toward = long === 0 ? { x: 0, y: 0 } : { x: x / long, y: y / long };
    const slopes = [
      { point: observation.to, ...toward },
      { point: observation.from, x: -toward.x, y: -toward.y },
    ];
    return { made: long, slopes };
  }
  const into = run(points, observation.from, observation.at);
  const out = run(points, observation.at, observation.to);
  const [a, b] = [headingSlope(into), headingSlope(out)];
  return {
    made: halfTurn(into.heading === null || out.heading === null ? 0 : out.heading - into.heading),
    slopes: [
      { point: observation.from, ...a },
      { point: observation.at, x: -b.x - a.x, y: -b.y - a.y },
      { point: observation.to, ...b },
    ],
  };
}

interface Run extends Point {
  readonly long: number;
  /** degrees; null: no length, no direction */
  readonly heading: number | null;
}

function run(points: readonly Point[], from: number, to: number): Run {
  const [p, q] = [points[from] as Point, points[to] as Point];
  const [x, y] = [q.x - p.x, q.y - p.y];
  const long = Math.hypot(x, y);
  return long < POINT ? { x: 0, y: 0, long: 0, heading: null } : { x, y, long, heading: Math.atan2(y, x) * DEGREES };
}
/** mm: nearer than this is the same point, and there is no direction between. */
const POINT = 1e-6;
const DEGREES = 180 / Math.PI;
/** Degrees by which a run turns for each mm that its end moves. */
const headingSlope = ({ x, y, long }: Run): Point =>
  long === 0 ? { x: 0, y: 0 } : { x: (-y / long ** 2) * DEGREES, y: (x / long ** 2) * DEGREES };

function judged(
  points: readonly Point[],
  { rows, misses, misfit }: Linearised,
  observations: readonly Observation[],
  unknowns: readonly { point: number; axis: 'x' | 'y' }[],
): Adjusted {
  const { cofactors, loose, rank } = inverted(rows, unknowns);
  // What is left of each measurement's error after the adjustment, and how that of one lies in the others.
  const left = Matrix.eye(observations.length).sub(rows.mmul(cofactors).mmul(rows.transpose()));
  const share = (i: number): number => Math.max(0, left.get(i, i));
  const residuals = observations.map((observation, i): Residual => {
    const change = -misses.get(i, 0) * observation.sigma;
    const redundancy = share(i);
    return {
      fitted: observation.value + change,
      change,
      redundancy,
      standardised: redundancy < CHECKED ? null : change / observation.sigma / Math.sqrt(redundancy),
    };
  });
  const alike = (index: number): number[] =>
    observations.flatMap((_, other) => {
      if (other === index || share(other) < CHECKED || share(index) < CHECKED) return [];
      return Math.abs(left.get(index, other)) / Math.sqrt(share(index) * share(other)) > ALIKE ? [other] : [];
    });
  return { points, residuals, misfit, redundancy: observations.length - rank, loose, alike };
}

/** The inverse of the normal matrix without the directions that nothing holds. */
function inverted(rows: Matrix, unknowns: readonly { point: number }[]): { cofactors: Matrix; loose: number[]; rank: number } {
  const count = unknowns.length;
  if (count === 0) return { cofactors: Matrix.zeros(0, 0), loose: [], rank: 0 };
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(rows.transpose().mmul(rows), { assumeSymmetric: true });
  const least = Math.max(...realEigenvalues) * UNHELD;
  const cofactors = Matrix.zeros(count, count);
  const loose = new Set<number>();
  let rank = 0;
  realEigenvalues.forEach((value, k) => {
    const direction = eigenvectorMatrix.getColumnVector(k);
    if (value > least) {
      rank += 1;
      cofactors.add(direction.mmul(direction.transpose()).div(value));
      return;
    }
    unknowns.forEach(({ point }, i) => {
      if (Math.abs(direction.get(i, 0)) > 0.01) loose.add(point);
    });
  });
  return { cofactors, loose: [...loose].sort((a, b) => a - b), rank };
}
