import type { FrontLine } from '../geometry/frontLine.ts';
import type { Gap } from '../geometry/gaps.ts';
import type { Part } from '../geometry/parts.ts';
import { type Box, boundingBox, contains } from '../geometry/polygon.ts';
import { separate } from '../geometry/separation.ts';
import { type FrontView, largestDiscs, viewFront } from '../geometry/tangentDiscs.ts';
import type { Point } from '../geometry/vec.ts';
import type { Alcove, OpenDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';
import { type Bound, EXACT, type Fronts, type Tangent, touchOf } from './waysFronts.ts';

export interface AlcovePassage {
  width: number;
  bound: Bound | null;
  /** By tangent disc: mm. */
  readonly widths: Map<number, number>;
}

/** A tangent disc and its index among the fronts'; -1: one that may stand partly in the doorway. */
interface Placed {
  readonly tangent: Tangent;
  readonly index: number;
}

/** Ways from the middle of a door's alcove, that door open, by target; null: it has no alcove to start from. */
export function throughAlcove(
  field: WaysField,
  fronts: Fronts,
  door: OpenDoor,
  limit: number,
  isExempt?: (gap: Gap) => boolean,
): AlcovePassage[] | null {
  const { alcove, clear } = door;
  const answers = fronts.targets.map((): AlcovePassage => ({ width: 0, bound: null, widths: new Map() }));
  if (!alcove) return clear > 0 ? null : answers;
  const most = Math.min(limit, clear);
  const placed = placeDiscs(field, fronts, door, alcove, most);
  const gaps = isExempt ? alcove.gaps.filter((gap) => !isExempt(gap)) : alcove.gaps;
  const [cut] = separate(alcove.parts, gaps, [alcove.source, ...placed.map((p) => p.tangent.disc.center)], [0]);
  for (const [k, { tangent, index }] of placed.entries()) {
    const gap = cut?.[k + 1] ?? null;
    const width = Math.min(gap?.width ?? Infinity, tangent.disc.diameter, alcove.room, most);
    const answer = answers[tangent.target] as AlcovePassage;
    if (index >= 0) answer.widths.set(index, width);
    if (width <= answer.width) continue;
    answer.width = width;
    if (gap && gap.width <= width + EXACT) answer.bound = { by: 'gap', gap, parts: alcove.parts };
    else answer.bound = tangent.disc.diameter <= width ? touchOf(fronts, tangent, alcove.parts) : { by: 'door', door };
  }
  return answers;
}

/** The fronts' discs, those beside the door found anew: before them a disc may stand partly in the doorway. */
function placeDiscs(field: WaysField, { targets, views, tangents, first }: Fronts, door: OpenDoor, alcove: Alcove, most: number): Placed[] {
  const doorBox = boundingBox(alcove.ring);
  const placed: Placed[] = [];
  for (const [t, target] of targets.entries()) {
    const beside = new Set<number>();
    for (const [line, { front }] of (views[t] ?? []).entries()) {
      if (target.opening === door.opening || apart(boundingBox([front.a, front.b]), doorBox) > most) continue;
      beside.add(line);
      for (const disc of largestDiscs(viewBesideDoor(field, front, most, alcove)))
        placed.push({ tangent: { target: t, line, disc }, index: -1 });
    }
    for (let index = first[t] as number; index < (first[t + 1] as number); index++) {
      const tangent = tangents[index] as Tangent;
      if (!beside.has(tangent.line)) placed.push({ tangent, index });
    }
  }
  return placed;
}

const apart = (p: Box, q: Box): number => Math.max(p.minX - q.maxX, q.minX - p.maxX, p.minY - q.maxY, q.minY - p.maxY);

/** A front beside a door that stands open: the alcove is floor too. */
function viewBesideDoor(field: WaysField, line: FrontLine, limit: number, { parts, ring }: Alcove): FrontView {
  const near = field.grid.near(boundingBox([line.a, line.b]), limit);
  const seen = near.map((i) => parts[i] as Part).concat(parts.slice(field.parts.length));
  const isFloor = (p: Point): boolean => field.isOpenFloor(p) || (contains(ring, p) && !field.isInHollow(p));
  return viewFront(line, seen, limit, isFloor);
}
