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

/** A tangent disc and its index among the fronts'; -1: one that may stand partly in the doorway. */
interface Placed {
  readonly tangent: Tangent;
  readonly index: number;
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
  const points = [alcove.source, ...placed.map((p) => p.tangent.disc.center)];
  return separateEach(alcove.parts, alcove.gaps, points, [0], exemptions).map(([cut]) => {
    const best = fronts.targets.map(() => NOWHERE);
    const widths = new Float64Array(fronts.tangents.length);
    for (let k = 0; k < placed.length; k++) {
      const { tangent, index } = placed[k] as Placed;
      const gap = cut?.[k + 1] ?? null;
      const width = Math.min(gap?.width ?? Infinity, tangent.disc.diameter, alcove.room, most);
      if (index >= 0) widths[index] = width;
      if (width <= (best[tangent.target] as Passage).width) continue;
      let bound: Bound = { by: 'door', door };
      if (gap && gap.width <= width + EXACT) bound = { by: 'gap', gap, parts: alcove.parts };
      else if (tangent.disc.diameter <= width) bound = touchOf(fronts, tangent, alcove.parts);
      best[tangent.target] = { width, bound };
    }
    return { best, widths };
  });
}

/** The fronts' discs, those beside the door found anew: before them a disc may stand partly in the doorway. */
function placeDiscs(field: WaysField, { targets, views, tangents, first }: Fronts, door: OpenDoor, alcove: Alcove, most: number): Placed[] {
  const doorBox = boundingBox(alcove.ring);
  const placed: Placed[] = [];
  for (const [t, target] of targets.entries()) {
    let beside: Set<number> | null = null;
    for (const [line, { front }] of (views[t] ?? []).entries()) {
      if (target.opening === door.opening || apart(front, doorBox) > most) continue;
      beside ??= new Set<number>();
      beside.add(line);
      for (const disc of largestDiscs(viewBesideDoor(field, front, most, alcove)))
        placed.push({ tangent: { target: t, line, disc }, index: -1 });
    }
    for (let index = first[t] as number; index < (first[t + 1] as number); index++) {
      const tangent = tangents[index] as Tangent;
      if (!beside?.has(tangent.line)) placed.push({ tangent, index });
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
