import { lerp, type Point } from '../geometry/vec.ts';
import type { Scene, SceneOpening } from '../scene/types.ts';
import { boundEnds, type WayEnd } from './boundEnds.ts';
import { exitsOf } from './exits.ts';
import { type Chairs, type Target, targetsOf } from './targets.ts';
import { WaysField } from './waysField.ts';
import { type SolvedWay, solveWays } from './waysSolve.ts';

/** A narrow place on the way out. */
export interface ExitWay {
  /** mm; 0: no way at all */
  readonly width: number;
  readonly at: Point | null;
  readonly between: readonly WayEnd[];
  /** Whose way out it holds narrow. */
  readonly fronts: readonly Target[];
  /** With chairs pushed in, all of these ways are wide enough. */
  readonly isByChairs: boolean;
}

/** The ways out that are narrower than what is asked. */
export interface ExitWays {
  /** From fronts to the exit that serves each best, by what holds them narrow; the narrowest first. */
  readonly narrow: readonly ExitWay[];
  /** Exits that no front has a wide way to, while others have. */
  readonly shut: readonly { readonly exit: SceneOpening; readonly way: ExitWay }[];
}

/**
 * Ways from every front to the exits, exits' own width left out. Chairs are in use, as they are when all have to
 * leave; ways that are then too narrow are tried once more with chairs pushed in.
 * @param needed mm; @param meets that width or a little less, as the standard prints it
 */
export function measureExitWays(scene: Scene, needed: number, meets: (width: number) => boolean): ExitWays {
  const exits = exitsOf(scene);
  if (!scene.room.isSound || exits.length === 0) return { narrow: [], shut: [] };
  const targets = frontsOf(scene, 'in use');
  if (targets.length === 0) return { narrow: [], shut: [] };
  const field = WaysField.of(scene);
  const byExit = exits.map((exit) => solveFrom(field, targets, exit, needed));
  const best = targets.map((_, t) => widest(byExit.flatMap((ways) => ways[t] ?? [])));
  const failing = best.filter((way) => !meets(way.width));
  const pushedIn = failing.length === 0 ? new Map<string, number>() : widthsPushedIn(scene, exits, failing, needed);
  const narrow = grouped(failing, (target) => meets(pushedIn.get(keyOf(target)) ?? 0));
  if (exits.length === 1) return { narrow, shut: [] };
  const shut = exits.flatMap((exit, e) => {
    const way = widest(byExit[e] ?? []);
    if (meets(way.width) || !best.some((one) => meets(one.width))) return [];
    const [only] = grouped([way], () => false);
    return only ? [{ exit, way: only }] : [];
  });
  return { narrow, shut };
}

const frontsOf = (scene: Scene, chairs: Chairs): Target[] => targetsOf(scene, chairs).filter((target) => target.kind !== 'door');
const keyOf = (target: Target): string => `${target.id} ${target.side}`;

const solveFrom = (field: WaysField, targets: readonly Target[], exit: SceneOpening, limit: number): SolvedWay[] =>
  solveWays(field, targets, { limit, shareAt: 0, shareMeets: 0, from: [exit] });

function widest(ways: readonly SolvedWay[]): SolvedWay {
  return ways.reduce((best, way) => (way.width > best.width ? way : best));
}

function widthsPushedIn(scene: Scene, exits: readonly SceneOpening[], failing: readonly SolvedWay[], limit: number): Map<string, number> {
  const keys = new Set(failing.map(({ target }) => keyOf(target)));
  const targets = frontsOf(scene, 'pushed in').filter((target) => keys.has(keyOf(target)));
  const field = WaysField.of(scene, 'pushed in');
  const widths = new Map<string, number>();
  for (const exit of exits)
    for (const { target, width } of solveFrom(field, targets, exit, limit))
      widths.set(keyOf(target), Math.max(width, widths.get(keyOf(target)) ?? 0));
  return widths;
}

/** By what holds them narrow: mending that mends them all. */
function grouped(ways: readonly SolvedWay[], isFreed: (target: Target) => boolean): ExitWay[] {
  const groups = new Map<string, ExitWay & { fronts: Target[] }>();
  for (const way of [...ways].sort((p, q) => p.width - q.width)) {
    const between = way.bound && way.width > 0 ? boundEnds(way.bound) : [];
    const [p, q] = between;
    const isByChairs = isFreed(way.target);
    const key = `${between
      .map((end) => end.id)
      .sort()
      .join(' ')} ${isByChairs}`;
    const group = groups.get(key) ?? { width: way.width, at: p && q ? lerp(p, q, 0.5) : null, between, fronts: [], isByChairs };
    groups.set(key, group);
    group.fronts.push(way.target);
  }
  return [...groups.values()];
}
