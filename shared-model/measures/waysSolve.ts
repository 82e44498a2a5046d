import { type Exemptions, noExemption } from '../geometry/separation.ts';
import { type FrontView, freeStretches } from '../geometry/tangentDiscs.ts';
import type { SceneOpening } from '../scene/types.ts';
import type { Target } from './targets.ts';
import { type ThroughAlcove, throughAlcove } from './waysAlcove.ts';
import { type OpenDoor, openDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';
import { type Bound, EXACT, type Fronts, lookAtFronts, NOWHERE, type Passage, type Tangent } from './waysFronts.ts';
import { type ThroughShut, throughShutDoors } from './waysShut.ts';

export interface SolvedWay {
  readonly target: Target;
  /** The door it is best reached from; null: there is none. */
  readonly from: SceneOpening | null;
  readonly width: number;
  readonly bound: Bound | null;
  /** Only that the width is no less than the limit is known. */
  readonly isCapped: boolean;
  /** Share of the front's length that discs of `shareAt` mm cover. */
  readonly share: number;
}

export interface SolveOptions {
  /** mm: widths up to here are exact. */
  readonly limit: number;
  /** mm: the disc whose cover of each front is asked; at most the limit. 0: the share is not asked. */
  readonly shareAt: number;
  /** mm: a slightly smaller one that passes as well (36 in for 915), if it covers all. */
  readonly shareMeets: number;
  /** The openings to come from; absent: every door and passage. */
  readonly from?: readonly SceneOpening[];
}

/** mm: a disc this little too small for the share's still counts; discs are found to about 0.01. */
const SHARE_SLACK = 1e-5;

/** Answers for the given targets, in their order. */
export function solveWays(field: WaysField, targets: readonly Target[], options: SolveOptions): SolvedWay[] {
  const [solved] = solveWaysEach(field, targets, options, noExemption);
  return solved as SolvedWay[];
}

/** The same once for each exemption; what they have in common is done once. */
export function solveWaysEach(field: WaysField, targets: readonly Target[], options: SolveOptions, exemptions: Exemptions): SolvedWay[][] {
  const { limit } = options;
  const openings = options.from ?? field.scene.room.openings.filter((o) => o.isWayIn);
  const doors = openings.map((opening) => openDoor(field, opening, limit));
  const fronts = lookAtFronts(field, targets, limit);
  const shut = throughShutDoors(field, fronts, doors, limit, exemptions);
  const open = doors.map((door) => throughAlcove(field, fronts, door, limit, exemptions));
  return exemptions.each.map((_, k) => {
    const byDoor = open.map((each) => each[k] ?? null);
    return answers(fronts, doors, shut[k] as ThroughShut, byDoor, options);
  });
}

function answers(
  fronts: Fronts,
  doors: readonly OpenDoor[],
  shut: ThroughShut,
  open: readonly (ThroughAlcove | null)[],
  options: SolveOptions,
): SolvedWay[] {
  const { limit } = options;
  const { targets } = fronts;
  /** A disc of this diameter gets to a tangent disc's place from some door. */
  const gets = (t: number, j: number, diameter: number): boolean => {
    for (let d = 0; d < doors.length; d++) {
      const door = doors[d] as OpenDoor;
      const alcove = open[d];
      if (targets[t]?.opening === door.opening) continue;
      if (alcove && (alcove.best[t] as Passage).width < Math.min(door.clear, diameter) - EXACT) continue;
      if ((shut.widths[d]?.[j] ?? 0) >= diameter - SHARE_SLACK) return true;
      if (door.clear >= diameter && (alcove?.widths[j] ?? 0) >= diameter - SHARE_SLACK) return true;
    }
    return false;
  };

  return targets.map((target, t): SolvedWay => {
    let from: OpenDoor | null = null;
    let best = NOWHERE;
    for (let d = 0; d < doors.length; d++) {
      const door = doors[d] as OpenDoor;
      if (target.opening === door.opening) continue;
      const passage = together(door, open[d]?.best[t] ?? null, shut.best[d]?.[t] ?? NOWHERE, limit);
      const isAsGood = door.opening.isMain && passage.width >= best.width - EXACT;
      if (from && !isAsGood && passage.width <= best.width + EXACT) continue;
      from = door;
      best = passage;
    }
    if (!from) return { target, from: null, width: 0, bound: null, isCapped: false, share: 0 };
    const isCapped = best.width >= limit - EXACT;
    const isNowhere = best.width < EXACT;
    let share = isNowhere || options.shareAt === 0 ? 0 : shareOf(fronts, t, options.shareAt, gets);
    const isAskedSmaller = share > 0 ? share < 1 : best.width >= options.shareMeets - EXACT;
    if (isAskedSmaller && options.shareMeets < options.shareAt && shareOf(fronts, t, options.shareMeets, gets) > 1 - EXACT) share = 1;
    return {
      target,
      from: from.opening,
      width: isCapped ? limit : isNowhere ? 0 : best.width,
      bound: isNowhere ? null : best.bound,
      isCapped,
      share,
    };
  });
}

/** The alcove's answer, or, where only the door itself is that narrow, the one from its inner line. */
function together(door: OpenDoor, open: Passage | null, shut: Passage, limit: number): Passage {
  if (!open) return shut;
  if (open.width < Math.min(door.clear, limit) - EXACT) return open;
  if (shut.width >= door.clear - EXACT || door.clear >= limit) return shut.width > open.width ? shut : open;
  return { width: door.clear, bound: { by: 'door', door } };
}

/** Used again for each line, of every front at every change. */
const touching: number[] = [];

/** The share of a target's length that lies before discs of a diameter (mm) which touch it and can get there. */
function shareOf(
  { views, tangents, first }: Fronts,
  target: number,
  diameter: number,
  gets: (target: number, tangent: number, diameter: number) => boolean,
): number {
  let total = 0;
  let covered = 0;
  // The discs of a target come line by line.
  let j = first[target] as number;
  const past = first[target + 1] as number;
  const lines = views[target] ?? [];
  for (let line = 0; line < lines.length; line++) {
    const view = lines[line] as FrontView;
    total += view.length;
    // Where along the line the discs touch that get there.
    let count = 0;
    for (; j < past && tangents[j]?.line === line; j++) if (gets(target, j, diameter)) touching[count++] = (tangents[j] as Tangent).disc.u;
    if (count === 0) continue;
    let end = 0;
    for (const [from, to] of keptStretches(view, diameter)) {
      let k = 0;
      while (k < count && !((touching[k] as number) >= from - 1e-3 && (touching[k] as number) <= to + 1e-3)) k++;
      if (k === count) continue;
      const start = Math.max(end, from - diameter / 2, 0);
      end = Math.max(end, Math.min(view.length, to + diameter / 2));
      covered += Math.max(0, end - start);
    }
  }
  return total === 0 ? 0 : Math.min(1, covered / total);
}

const stretches = new WeakMap<FrontView, Map<number, readonly (readonly [number, number])[]>>();

/** The free stretches of a view, found once for each diameter: two are asked about, of every front at every change. */
function keptStretches(view: FrontView, diameter: number): readonly (readonly [number, number])[] {
  const mine = stretches.get(view) ?? new Map<number, readonly (readonly [number, number])[]>();
  stretches.set(view, mine);
  const before = mine.get(diameter);
  if (before) return before;
  const found = freeStretches(view, diameter);
  mine.set(diameter, found);
  return found;
}
