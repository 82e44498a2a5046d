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
  const best = sources.map(() => targets.map((): Passage => NOWHERE));
  const widths = sources.map(() => new Float64Array(tangents.length));
  let k = 0;
  for (const [d, discs] of sources.entries()) {
    const answers = best[d] as Passage[];
    const known = widths[d] as Float64Array;
    for (const source of discs) {
      const cut = cuts[k++];
      for (let j = 0; j < tangents.length; j++) {
        const tangent = tangents[j] as Tangent;
        const gap = cut?.[before + j] ?? null;
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
