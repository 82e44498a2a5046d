import { accessFigures } from '#model/measures/accessFigures.ts';
import { type Target, targetsOf } from '#model/measures/targets.ts';
import { solveAll } from '#model/measures/ways.ts';
import { WaysField } from '#model/measures/waysField.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { ClipperWays } from '#tests/support/clipperWays.ts';
import { percentiles, type Times } from './percentiles.ts';

/** mm: where a bisection stops. */
const WITHIN = 0.15;
const RUNS = 30;

/** The same widths twice: by the gaps, and as an engineer would find them with a library of offsets. */
interface WaysRace {
  readonly ways: number;
  readonly ours: Times;
  /** ms, once: it takes too long for more */
  readonly bisection: number;
  /** Ways whose two widths are farther apart than both may be wrong. */
  readonly apart: readonly string[];
}

/** Widths up to the route's of every way, from nothing known; both sides keep what their own answers share. */
export function waysRace(classroom: Classroom): WaysRace {
  const scene = buildScene(classroom);
  const { routeWidth } = accessFigures(scene);
  const targets = targetsOf(scene);
  const took: number[] = [];
  let solved = solveAll(WaysField.of(scene), targets, { limit: routeWidth });
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    solved = solveAll(WaysField.of(scene), targets, { limit: routeWidth });
    took.push(performance.now() - start);
  }
  const start = performance.now();
  // No finer than the answer asks for: finer arcs take the library much longer.
  const other = new ClipperWays(scene, { arc: WITHIN / 3, touch: WITHIN / 5 });
  const found = targets.map((target) => bisected(other, target, routeWidth));
  const bisection = performance.now() - start;
  const apart = solved.flatMap(({ target, width }, i) => {
    const their = found[i] ?? 0;
    return Math.abs(their - width) <= 2 * WITHIN ? [] : [`${target.id} ${target.side ?? ''}: ${width.toFixed(2)} and ${their.toFixed(2)}`];
  });
  return { ways: targets.length, ours: percentiles(took), bisection, apart };
}

/** The widest disc (mm, at most `limit`) that reaches a front, halved down to `WITHIN`. Equal widths are offset once. */
function bisected(other: ClipperWays, target: Target, limit: number): number {
  if (other.canReach(target, limit)) return limit;
  let low = 0;
  let high = limit;
  while (high - low > WITHIN) {
    const middle = (low + high) / 2;
    if (other.canReach(target, middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
