import type { FrontLine } from '../geometry/frontLine.ts';
import { type Exemptions, type Separation, separateEach } from '../geometry/separation.ts';
import type { TangentDisc } from '../geometry/tangentDiscs.ts';
import type { SceneOpening } from '../scene/types.ts';
import { doorLine } from './targets.ts';
import type { OpenDoor } from './waysDoor.ts';
import type { WaysField } from './waysField.ts';
import { type Bound, discsAtDoor, EXACT, type Fronts, NOWHERE, type Passage, type Tangent, touchOf } from './waysFronts.ts';

export interface ThroughShut {
  /** By door, then target. */
  readonly best: readonly (readonly Passage[])[];
  /** By door, then tangent disc: mm. */
  readonly widths: readonly Float64Array[];
}

/** Ways from the discs tangent to each door's inner line, every opening shut: the door's own width left out. One answer for each exemption. */
export function throughShutDoors(
  field: WaysField,
  fronts: Fronts,
  doors: readonly OpenDoor[],
  limit: number,
  exemptions: Exemptions,
): ThroughShut[] {
  const { tangents } = fronts;
  const sources = doors.map(({ opening }) =>
    discsAtDoor(field, opening, limit).map((disc) => ({ disc, line: doorLine(opening), opening })),
  );
  const flat = sources.flat();
  const points = [...flat.map((s) => s.disc.center), ...tangents.map((t) => t.disc.center)];
  return separateEach(field.parts, field.gaps(limit), points, Array.from(flat.keys()), exemptions).map((cuts) =>
    widthsOf(field, fronts, sources, cuts),
  );
}

/** A disc at a door's inner line that people start from. */
interface Source {
  readonly disc: TangentDisc;
  readonly line: FrontLine;
  readonly opening: SceneOpening;
}

function widthsOf(field: WaysField, fronts: Fronts, sources: readonly (readonly Source[])[], cuts: Separation): ThroughShut {
  const { targets, tangents } = fronts;
  const before = sources.reduce((sum, discs) => sum + discs.length, 0);
  const widths = sources.map(() => new Float64Array(tangents.length));
  let first = 0;
  const best = sources.map((discs, d): Passage[] => {
    const known = widths[d] as Float64Array;
    // By target: the widest so far, and where from and to; what binds it is told of the last alone.
    const most = new Float64Array(targets.length);
    const start = new Int32Array(targets.length);
    const end = new Int32Array(targets.length);
    for (let s = 0; s < discs.length; s++) {
      const cut = cuts[first + s];
      const source = discs[s] as Source;
      for (let j = 0; j < tangents.length; j++) {
        const { target, disc } = tangents[j] as Tangent;
        const width = Math.min(cut?.[before + j]?.width ?? Infinity, disc.diameter, source.disc.diameter);
        if (width > (known[j] as number)) known[j] = width;
        if (width <= (most[target] as number)) continue;
        most[target] = width;
        start[target] = s;
        end[target] = j;
      }
    }
    const passageTo = (t: number): Passage => {
      const width = most[t] as number;
      if (width <= 0) return NOWHERE;
      const source = discs[start[t] as number] as Source;
      const tangent = tangents[end[t] as number] as Tangent;
      const gap = cuts[first + (start[t] as number)]?.[before + (end[t] as number)] ?? null;
      if (gap && gap.width <= width + EXACT) return { width, bound: { by: 'gap', gap, parts: field.parts } };
      if (tangent.disc.diameter <= width) return { width, bound: touchOf(fronts, tangent, field.parts) };
      const bound: Bound = { by: 'touch', line: source.line, disc: source.disc, id: source.opening.wall.id, parts: field.parts };
      return { width, bound };
    };
    const passages = targets.map((_, t) => passageTo(t));
    first += discs.length;
    return passages;
  });
  return { best, widths };
}
