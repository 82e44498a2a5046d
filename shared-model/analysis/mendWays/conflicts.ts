import { distance } from '../../geometry/vec.ts';
import { at, type Layout } from './layout.ts';
import type { Short, Stage, Unit } from './stage.ts';

/** What cannot stay so: as long as all of these stand where they stand here, something is wrong, whatever else moves. */
export interface Conflict {
  /** Unit and how far it is moved, mm. */
  readonly members: Layout;
}

/** Conflicts found so far. */
export class Conflicts {
  private readonly all: Conflict[] = [];

  add(conflict: Conflict): void {
    this.all.push(conflict);
  }

  /** Those that a layout has, the fewest members first. */
  presentIn(layout: Layout): Conflict[] {
    return this.all.filter(({ members }) => isHeld(members, layout)).sort((p, q) => p.members.size - q.members.size);
  }
}

function isHeld(members: Layout, layout: Layout): boolean {
  for (const [unit, shift] of members) {
    const now = at(layout, unit);
    if (now.x !== shift.x || now.y !== shift.y) return false;
  }
  return true;
}

export const conflictOf = (layout: Layout, units: Iterable<string>): Conflict => ({
  members: new Map([...units].map((unit) => [unit, at(layout, unit)])),
});

/**
 * The fewest units (none can be left out) with which something stays wrong when all other free units are taken out of
 * the room. What is taken out never makes a way narrower, so nothing that is done with the others mends it.
 * @param isWrong told with the units that are out of the room
 */
export function* leastWrong(
  units: readonly Unit[],
  near: (unit: Unit) => number,
  isWrong: (without: ReadonlySet<string>) => boolean,
): Generator<void, Unit[]> {
  const sorted = [...units].sort((p, q) => near(p) - near(q));
  const out = (kept: readonly Unit[]): Set<string> => {
    const all = new Set(units.map((unit) => unit.id));
    for (const unit of kept) all.delete(unit.id);
    return all;
  };
  let kept = sorted;
  for (let n = 2; n < sorted.length; n *= 2) {
    yield;
    if (!isWrong(out(sorted.slice(0, n)))) continue;
    kept = sorted.slice(0, n);
    break;
  }
  for (const unit of [...kept].reverse()) {
    const fewer = kept.filter((other) => other !== unit);
    yield;
    if (isWrong(out(fewer))) kept = fewer;
  }
  return kept;
}

/** mm from where a way is held back to a unit; the piece whose front it is counts as there. */
export function nearTo(stage: Stage, layout: Layout, short: Short): (unit: Unit) => number {
  return (unit) => {
    if (unit === stage.freeUnitOf(short.target)) return -2;
    if (short.between.some((id) => stage.freeUnitOf(id) === unit)) return -1;
    const { x, y } = at(layout, unit.id);
    const [body] = unit.bodies;
    if (!body) return Infinity;
    return distance({ x: body.center.x + x, y: body.center.y + y }, short.at);
  };
}
