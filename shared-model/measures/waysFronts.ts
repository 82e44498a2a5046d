import { type FrontLine, lengthOf } from '../geometry/frontLine.ts';
import type { Gap } from '../geometry/gaps.ts';
import type { Part } from '../geometry/parts.ts';
import { boundingBox, grownBox } from '../geometry/polygon.ts';
import { type FrontView, largestDiscs, type TangentDisc, viewFront } from '../geometry/tangentDiscs.ts';
import type { SceneOpening } from '../scene/types.ts';
import { localValues } from './fieldLocals.ts';
import { doorLine, type Target } from './targets.ts';
import type { OpenDoor } from './waysDoor.ts';
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
export const NOWHERE: Passage = { width: 0, bound: null };

/** mm: widths nearer than this are the same. */
export const EXACT = 1e-7;

/** A largest disc before one line of one target. */
export interface Tangent {
  readonly target: number;
  readonly line: number;
  readonly disc: TangentDisc;
}

/** The fronts asked about, what stands before each, and the largest discs that touch them. */
export interface Fronts {
  readonly targets: readonly Target[];
  readonly views: readonly (readonly FrontView[])[];
  readonly tangents: readonly Tangent[];
  /** Index of the first tangent disc of each target, and one past the last of the last. */
  readonly first: readonly number[];
}

export function lookAtFronts(field: WaysField, targets: readonly Target[], limit: number): Fronts {
  const views: FrontView[][] = [];
  const tangents: Tangent[] = [];
  const first: number[] = [0];
  for (let target = 0; target < targets.length; target++) {
    const { lines } = targets[target] as Target;
    const seen: FrontView[] = [];
    for (let line = 0; line < lines.length; line++) {
      const { view, discs } = lookAt(field, lines[line] as FrontLine, limit);
      seen.push(view);
      for (const disc of discs) tangents.push({ target, line, disc });
    }
    views.push(seen);
    first.push(tangents.length);
  }
  return { targets, views, tangents, first };
}

interface Look {
  readonly view: FrontView;
  readonly discs: readonly TangentDisc[];
}

const looks = localValues<FrontLine, Look>();

/** Used again for each front. */
const parts: Part[] = [];

/** A front's view and largest discs; kept, and shared with fields that only add or change things elsewhere. */
function lookAt(field: WaysField, line: FrontLine, limit: number): Look {
  const { base } = field;
  const known = looks(field, limit);
  const before = known.get(line);
  if (before) return before;
  const box = boundingBox([line.a, line.b]);
  const near = field.grid.near(box, limit);
  if (base && !near.some((index) => index >= base.parts.length)) return lookAt(base, line, limit);
  parts.length = 0;
  for (const index of near) parts.push(field.parts[index] as Part);
  const view = viewFront(line, parts, limit, field.isOpenFloor);
  return known.set(line, { view, discs: largestDiscs(view) }, grownBox(box, limit));
}

/** The largest discs, up to `limit` mm, that touch a door's inner line. */
export function discsAtDoor(field: WaysField, opening: SceneOpening, limit: number): readonly TangentDisc[] {
  const line = doorLine(opening);
  return lengthOf(line) > 0 ? lookAt(field, line, limit).discs : [];
}

/** The same for every door and passage at once. */
export const doorDiscs = (field: WaysField, limit: number): TangentDisc[] =>
  field.scene.room.openings.filter((o) => o.isWayIn).flatMap((o) => discsAtDoor(field, o, limit));

export function touchOf({ targets }: Fronts, { target, line, disc }: Tangent, parts: readonly Part[]): Bound {
  const one = targets[target] as Target;
  return { by: 'touch', line: one.lines[line] as FrontLine, disc, id: one.opening?.wall.id ?? one.id, parts };
}
