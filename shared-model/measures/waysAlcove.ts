import type { FrontLine } from '../geometry/frontLine.ts';
import type { Part } from '../geometry/parts.ts';
import { type Box, boundingBox, contains } from '../geometry/polygon.ts';
import { type Exemptions, separateEach } from '../geometry/separation.ts';
import { type FrontView, largestDiscs, viewFront } from '../geometry/tangentDiscs.ts';
import type { Point } from '../geometry/vec.ts';
import type { Alcove, OpenDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';
import { type Bound, EXACT, type Fronts, NOWHERE, type Passage, type Tangent, touchOf } from './waysFronts.ts';

export interface ThroughAlcove {
  /** By target. */
  readonly best: readonly Passage[];
  /** By tangent disc: mm. */
  readonly widths: Float64Array;
}

/** Tangent discs, and of each its index among the fronts'; -1: one that may stand partly in the doorway. */
interface Placed {
  readonly tangents: Tangent[];
  readonly indices: number[];
}

/**
 * Ways from the middle of a door's alcove, that door open; null: it has no alcove to start from. One answer for each
 * exemption.
 */
export function throughAlcove(
  field: WaysField,
  fronts: Fronts,
  door: OpenDoor,
  limit: number,
  exemptions: Exemptions,
): (ThroughAlcove | null)[] {
  const { alcove, clear } = door;
  if (!alcove) {
    const shut = { best: fronts.targets.map(() => NOWHERE), widths: new Float64Array(fronts.tangents.length) };
    return exemptions.each.map(() => (clear > 0 ? null : shut));
  }
  const most = Math.min(limit, clear);
  const placed = placeDiscs(field, fronts, door, alcove, most);
  const points = [alcove.source];
  for (const { disc } of placed.tangents) points.push(disc.center);
  return separateEach(alcove.parts, alcove.gaps, points, [0], exemptions).map(([cut]) => {
    const widths = new Float64Array(fronts.tangents.length);
    // By target: the widest so far, and where to; what binds it is told of the last alone.
    const widest = new Float64Array(fronts.targets.length);
    const end = new Int32Array(fronts.targets.length);
    for (let k = 0; k < placed.tangents.length; k++) {
      const { target, disc } = placed.tangents[k] as Tangent;
      const index = placed.indices[k] as number;
      const width = Math.min(cut?.[k + 1]?.width ?? Infinity, disc.diameter, alcove.room, most);
      if (index >= 0) widths[index] = width;
      if (width <= (widest[target] as number)) continue;
      widest[target] = width;
      end[target] = k;
    }
    const boundOf = (k: number, width: number): Bound => {
      const tangent = placed.tangents[k] as Tangent;
      const gap = cut?.[k + 1] ?? null;
      if (gap && gap.width <= width + EXACT) return { by: 'gap', gap, parts: alcove.parts };
      return tangent.disc.diameter <= width ? touchOf(fronts, tangent, alcove.parts) : { by: 'door', door };
    };
    const best = fronts.targets.map((_, t) => {
      const width = widest[t] as number;
      return width > 0 ? { width, bound: boundOf(end[t] as number, width) } : NOWHERE;
    });
    return { best, widths };
  });
}

/** The fronts' discs, those beside the door found anew: before them a disc may stand partly in the doorway. */
function placeDiscs(field: WaysField, { targets, views, tangents, first }: Fronts, door: OpenDoor, alcove: Alcove, most: number): Placed {
  const doorBox = boundingBox(alcove.ring);
  const placed: Placed = { tangents: [], indices: [] };
  const place = (tangent: Tangent, index: number): void => {
    placed.tangents.push(tangent);
    placed.indices.push(index);
  };
  for (let target = 0; target < targets.length; target++) {
    const lines = targets[target]?.opening === door.opening ? [] : (views[target] ?? []);
    let beside: Set<number> | null = null;
    for (let line = 0; line < lines.length; line++) {
      const { front } = lines[line] as FrontView;
      if (apart(front, doorBox) > most) continue;
      beside ??= new Set<number>();
      beside.add(line);
      for (const disc of largestDiscs(viewBesideDoor(field, front, most, alcove))) place({ target, line, disc }, -1);
    }
    for (let index = first[target] as number; index < (first[target + 1] as number); index++) {
      const tangent = tangents[index] as Tangent;
      if (!beside?.has(tangent.line)) place(tangent, index);
    }
  }
  return placed;
}

/** mm between the boxes of a front and a door; less than 0: they overlap. */
function apart({ a, b }: FrontLine, q: Box): number {
  const x = Math.max(Math.min(a.x, b.x) - q.maxX, q.minX - Math.max(a.x, b.x));
  return Math.max(x, Math.min(a.y, b.y) - q.maxY, q.minY - Math.max(a.y, b.y));
}

/** A front beside a door that stands open: the alcove is floor too. */
function viewBesideDoor(field: WaysField, line: FrontLine, limit: number, { parts, ring }: Alcove): FrontView {
  const near = field.grid.near(boundingBox([line.a, line.b]), limit);
  const seen = near.map((i) => parts[i] as Part).concat(parts.slice(field.parts.length));
  const isFloor = (p: Point): boolean => field.isOpenFloor(p) || (contains(ring, p) && !field.isInHollow(p));
  return viewFront(line, seen, limit, isFloor);
}
