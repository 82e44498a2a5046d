import { type FrontLine, lengthOf } from '../geometry/frontLine.ts';
import type { Gap } from '../geometry/gaps.ts';
import type { Part } from '../geometry/parts.ts';
import { boundingBox, contains } from '../geometry/polygon.ts';
import { separate } from '../geometry/separation.ts';
import { type FrontView, freeStretches, largestDiscs, type TangentDisc, viewFront } from '../geometry/tangentDiscs.ts';
import type { Point } from '../geometry/vec.ts';
import type { SceneOpening } from '../scene/types.ts';
import { doorLine, type Target } from './targets.ts';
import { type Alcove, type OpenDoor, openDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';

/** What holds a way to its width. */
export type Bound =
  | { readonly by: 'gap'; readonly gap: Gap; readonly parts: readonly Part[] }
  /** What stands before the front itself. */
  | { readonly by: 'touch'; readonly line: FrontLine; readonly disc: TangentDisc; readonly id: string; readonly parts: readonly Part[] }
  | { readonly by: 'door'; readonly door: OpenDoor };

/** The widest disc from a door to a front, mm. */
export interface Passage {
  readonly width: number;
  readonly bound: Bound | null;
}

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
  /** mm: the disc whose cover of each front is asked; at most the limit. */
  readonly shareAt: number;
  /** mm: a slightly smaller one that passes as well (36 in for 915), if it covers all. */
  readonly shareMeets: number;
  /** Gaps that count as open. */
  readonly isExempt?: (gap: Gap) => boolean;
}

interface Tangent {
  readonly target: number;
  readonly line: number;
  readonly disc: TangentDisc;
}

const EXACT = 1e-7;
const NOWHERE: Passage = { width: 0, bound: null };

/** Answers for the given targets, in their order. */
export function solveWays(field: WaysField, targets: readonly Target[], options: SolveOptions): SolvedWay[] {
  const { limit } = options;
  const doors = field.scene.room.openings.filter((o) => o.isWayIn).map((o) => openDoor(field, o, limit));
  const views = targets.map((target) => target.lines.map((line) => view(field, line, limit)));
  const tangents = views.flatMap((lines, target) =>
    lines.flatMap((one, line) => largestDiscs(one).map((disc): Tangent => ({ target, line, disc }))),
  );
  const shut = throughShutDoors(field, targets, tangents, doors, options);
  const open = doors.map((door) => throughAlcove(field, targets, views, tangents, door, options));
  return targets.map((target, t) => {
    let best: { from: OpenDoor; passage: Passage } | null = null;
    for (const [d, door] of doors.entries()) {
      if (target.opening === door.opening) continue;
      const passage = together(door, open[d]?.[t] ?? null, shut.best[d]?.[t] ?? NOWHERE, limit);
      const isBetter = !best || passage.width > best.passage.width + EXACT;
      if (isBetter || (door.opening.isMain && passage.width >= (best as NonNullable<typeof best>).passage.width - EXACT))
        best = { from: door, passage };
    }
    if (!best) return { target, from: null, width: 0, bound: null, isCapped: false, share: 0 };
    const { width, bound } = best.passage;
    const isCapped = width >= limit - EXACT;
    const shareWith = (diameter: number): number => {
      const isCovered = (j: number): boolean =>
        doors.some((door, d) => {
          const alcove = open[d]?.[t];
          if (target.opening === door.opening) return false;
          if (alcove && alcove.width < Math.min(door.clear, diameter) - EXACT) return false;
          if ((shut.widths[d]?.[j] ?? 0) >= diameter - 1e-5) return true;
          return door.clear >= diameter && (alcove?.widths.get(j) ?? 0) >= diameter - 1e-5;
        });
      return shareOf(views[t] ?? [], t, tangents, isCovered, diameter);
    };
    const share = shareWith(options.shareAt);
    const isWhole = share < 1 && options.shareMeets < options.shareAt && shareWith(options.shareMeets) > 1 - 1e-9;
    return {
      target,
      from: best.from.opening,
      width: isCapped ? limit : width < EXACT ? 0 : width,
      bound: width < EXACT ? null : bound,
      isCapped,
      share: isWhole ? 1 : share,
    };
  });
}

/** The alcove's answer, or, where only the door itself is that narrow, the one from its inner line. */
function together(door: OpenDoor, open: Passage | null, shut: Passage, limit: number): Passage {
  if (!open) return shut;
  if (open.width < Math.min(door.clear, limit) - EXACT) return open;
  if (shut.width > door.clear || door.clear >= limit) return shut.width > open.width ? shut : open;
  return { width: door.clear, bound: { by: 'door', door } };
}

function view(field: WaysField, line: FrontLine, limit: number): FrontView {
  const near = field.grid.near(boundingBox([line.a, line.b]), limit);
  return viewFront(
    line,
    near.map((i) => field.parts[i] as Part),
    limit,
    field.isOpenFloor,
  );
}

/** The largest discs, up to `limit` mm, that touch a door's inner line. */
function discsAtDoor(field: WaysField, opening: SceneOpening, limit: number): TangentDisc[] {
  const line = doorLine(opening);
  return lengthOf(line) > 0 ? largestDiscs(view(field, line, limit)) : [];
}

/** The same for every door and passage at once. */
export const doorDiscs = (field: WaysField, limit: number): TangentDisc[] =>
  field.scene.room.openings.filter((o) => o.isWayIn).flatMap((o) => discsAtDoor(field, o, limit));

/** A front beside a door that stands open: the alcove is floor too. */
function viewBesideDoor(field: WaysField, line: FrontLine, limit: number, { parts, ring }: Alcove): FrontView {
  const near = field.grid.near(boundingBox([line.a, line.b]), limit);
  const seen = near.map((i) => parts[i] as Part).concat(parts.slice(field.parts.length));
  const isFloor = (p: Point): boolean => field.isOpenFloor(p) || (contains(ring, p) && !field.isInHollow(p));
  return viewFront(line, seen, limit, isFloor);
}

/** From the discs tangent to each door's inner line, every opening shut. */
function throughShutDoors(
  field: WaysField,
  targets: readonly Target[],
  tangents: readonly Tangent[],
  doors: readonly OpenDoor[],
  { limit, isExempt }: SolveOptions,
) {
  const sources = doors.map((door) => {
    const line = doorLine(door.opening);
    return discsAtDoor(field, door.opening, limit).map((disc) => ({ disc, line }));
  });
  const flat = sources.flat();
  const gaps = isExempt ? field.gaps(limit).filter((gap) => !isExempt(gap)) : field.gaps(limit);
  const points = [...flat.map((s) => s.disc.center), ...tangents.map((t) => t.disc.center)];
  const cuts = separate(
    field.parts,
    gaps,
    points,
    flat.map((_, k) => k),
  );
  const best: Passage[][] = [];
  const widths = doors.map(() => new Float64Array(tangents.length));
  let k = 0;
  for (const [d, discs] of sources.entries()) {
    const answers = targets.map((): Passage => NOWHERE);
    for (const source of discs) {
      const cut = cuts[k++];
      tangents.forEach((tangent, j) => {
        const gap = cut?.[flat.length + j] ?? null;
        const width = Math.min(gap?.width ?? Infinity, tangent.disc.diameter, source.disc.diameter);
        const known = widths[d] as Float64Array;
        known[j] = Math.max(known[j] as number, width);
        if (width <= (answers[tangent.target] as Passage).width) return;
        const bound: Bound =
          gap && gap.width <= width + EXACT
            ? { by: 'gap', gap, parts: field.parts }
            : tangent.disc.diameter <= width
              ? touch(targets, tangent, field.parts)
              : { by: 'touch', line: source.line, disc: source.disc, id: (doors[d] as OpenDoor).opening.wall.id, parts: field.parts };
        answers[tangent.target] = { width, bound };
      });
    }
    best.push(answers);
  }
  return { best, widths };
}

function touch(targets: readonly Target[], { target, line, disc }: Tangent, parts: readonly Part[]): Bound {
  const one = targets[target] as Target;
  return { by: 'touch', line: one.lines[line] as FrontLine, disc, id: one.opening?.wall.id ?? one.id, parts };
}

type AlcovePassage = Passage & { readonly widths: ReadonlyMap<number, number> };

/** From the middle of a door's alcove, that door open. */
function throughAlcove(
  field: WaysField,
  targets: readonly Target[],
  views: readonly (readonly FrontView[])[],
  tangents: readonly Tangent[],
  door: OpenDoor,
  { limit, isExempt }: SolveOptions,
): AlcovePassage[] | null {
  const { alcove, clear } = door;
  if (!alcove) return clear > 0 ? null : targets.map(() => ({ ...NOWHERE, widths: new Map<number, number>() }));
  const most = Math.min(limit, clear);
  const byDoor = new Set<string>();
  const openingBox = boundingBox(alcove.ring);
  const here: { tangent: Tangent; index: number }[] = tangents.map((tangent, index) => ({ tangent, index }));
  // Before fronts beside the door a disc may stand partly in the doorway.
  targets.forEach((target, t) => {
    views[t]?.forEach((one, line) => {
      const box = boundingBox([one.front.a, one.front.b]);
      const away = Math.max(box.minX - openingBox.maxX, openingBox.minX - box.maxX, box.minY - openingBox.maxY, openingBox.minY - box.maxY);
      if (target.opening === door.opening || away > most) return;
      byDoor.add(`${t}/${line}`);
      const near = viewBesideDoor(field, one.front, most, alcove);
      for (const disc of largestDiscs(near)) here.push({ tangent: { target: t, line, disc }, index: -1 });
    });
  });
  const used = here.filter(({ tangent, index }) => index < 0 || !byDoor.has(`${tangent.target}/${tangent.line}`));
  const gaps = isExempt ? alcove.gaps.filter((gap) => !isExempt(gap)) : alcove.gaps;
  const [cut] = separate(alcove.parts, gaps, [alcove.source, ...used.map((u) => u.tangent.disc.center)], [0]);
  const answers = targets.map((): { width: number; bound: Bound | null; widths: Map<number, number> } => ({
    ...NOWHERE,
    widths: new Map(),
  }));
  used.forEach(({ tangent, index }, k) => {
    const gap = cut?.[k + 1] ?? null;
    const width = Math.min(gap?.width ?? Infinity, tangent.disc.diameter, alcove.room, most);
    const answer = answers[tangent.target] as (typeof answers)[number];
    if (index >= 0) answer.widths.set(index, width);
    if (width <= answer.width) return;
    answer.width = width;
    answer.bound =
      gap && gap.width <= width + EXACT
        ? { by: 'gap', gap, parts: alcove.parts }
        : tangent.disc.diameter <= width
          ? touch(targets, tangent, alcove.parts)
          : { by: 'door', door };
  });
  return answers;
}

function shareOf(
  views: readonly FrontView[],
  target: number,
  tangents: readonly Tangent[],
  isCovered: (index: number) => boolean,
  diameter: number,
): number {
  let total = 0;
  let covered = 0;
  views.forEach((one, line) => {
    total += one.length;
    let end = 0;
    for (const [from, to] of freeStretches(one, diameter)) {
      const isReached = tangents.some(
        (t, j) => t.target === target && t.line === line && t.disc.u >= from - 1e-3 && t.disc.u <= to + 1e-3 && isCovered(j),
      );
      if (!isReached) continue;
      const start = Math.max(end, from - diameter / 2, 0);
      end = Math.max(end, Math.min(one.length, to + diameter / 2));
      covered += Math.max(0, end - start);
    }
  });
  return total === 0 ? 0 : Math.min(1, covered / total);
}
