import type { Gap } from '../geometry/gaps.ts';
import { separate } from '../geometry/separation.ts';
import { doorLine } from './targets.ts';
import type { OpenDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';
import { type Bound, discsAtDoor, EXACT, type Fronts, NOWHERE, type Passage, touchOf } from './waysFronts.ts';

export interface ThroughShut {
  /** By door, then target. */
  readonly best: readonly (readonly Passage[])[];
  /** By door, then tangent disc: mm. */
  readonly widths: readonly Float64Array[];
}

/** Ways from the discs tangent to each door's inner line, every opening shut: the door's own width left out. */
export function throughShutDoors(
  field: WaysField,
  fronts: Fronts,
  doors: readonly OpenDoor[],
  limit: number,
  isExempt?: (gap: Gap) => boolean,
): ThroughShut {
  const { targets, tangents } = fronts;
  const sources = doors.map(({ opening }) =>
    discsAtDoor(field, opening, limit).map((disc) => ({ disc, line: doorLine(opening), opening })),
  );
  const flat = sources.flat();
  const gaps = isExempt ? field.gaps(limit).filter((gap) => !isExempt(gap)) : field.gaps(limit);
  const points = [...flat.map((s) => s.disc.center), ...tangents.map((t) => t.disc.center)];
  const cuts = separate(field.parts, gaps, points, Array.from(flat.keys()));
  const best = doors.map(() => targets.map((): Passage => NOWHERE));
  const widths = doors.map(() => new Float64Array(tangents.length));
  let k = 0;
  for (const [d, discs] of sources.entries()) {
    const answers = best[d] as Passage[];
    const known = widths[d] as Float64Array;
    for (const source of discs) {
      const cut = cuts[k++];
      for (const [j, tangent] of tangents.entries()) {
        const gap = cut?.[flat.length + j] ?? null;
        const width = Math.min(gap?.width ?? Infinity, tangent.disc.diameter, source.disc.diameter);
        if (width > (known[j] as number)) known[j] = width;
        if (width <= (answers[tangent.target] as Passage).width) continue;
        let bound: Bound;
        if (gap && gap.width <= width + EXACT) bound = { by: 'gap', gap, parts: field.parts };
        else if (tangent.disc.diameter <= width) bound = touchOf(fronts, tangent, field.parts);
        else bound = { by: 'touch', line: source.line, disc: source.disc, id: source.opening.wall.id, parts: field.parts };
        answers[tangent.target] = { width, bound };
      }
    }
  }
  return { best, widths };
}
