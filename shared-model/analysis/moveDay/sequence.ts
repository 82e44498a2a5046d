import type { SceneBody } from '../../scene/types.ts';
import type { MoveFloor } from './floor.ts';
import { type AsideSets, coming, eventsBefore, leastAside, type Precedence } from './setAside.ts';
import type { MoveUnit } from './units.ts';

/** One thing done with a unit, in the order of the day. */
export interface UnitEvent {
  readonly unit: number;
  /** move: from its place to its new one; aside: to free floor for a while; back: from there to its new place. */
  readonly does: 'move' | 'aside' | 'back' | 'out' | 'in';
}

export interface Sequence {
  readonly events: readonly UnitEvent[];
  readonly aside: readonly number[];
  /** Where each unit set aside stands for a while; null: no floor is free for it. Rugs are rolled up. */
  readonly places: ReadonlyMap<number, readonly SceneBody[] | null>;
  /** No smaller set of pieces set aside would do. */
  readonly isLeast: boolean;
}

/** An order in which no place that something comes to is taken, with as few pieces set aside as possible and floor for them. */
export function sequenceOf(units: readonly MoveUnit[], precedences: readonly Precedence[], floor: MoveFloor): Sequence {
  const { sets, isLeast }: AsideSets = leastAside(units.length, precedences);
  let best: { sequence: Sequence; homeless: number; size: number } | null = null;
  for (const aside of sets) {
    const sequence = withPlaces(units, precedences, floor, aside, isLeast);
    const homeless = [...sequence.places.values()].filter((place) => place === null).length;
    // Of sets of one size the one that carries the least furniture twice.
    const size = aside.reduce((sum, unit) => sum + floorOf(units[unit]), 0);
    if (!best || homeless < best.homeless || (homeless === best.homeless && size < best.size)) best = { sequence, homeless, size };
  }
  return best?.sequence ?? { events: [], aside: [], places: new Map(), isLeast };
}

const floorOf = (unit: MoveUnit | undefined): number => unit?.from.reduce((sum, { width, depth }) => sum + width * depth, 0) ?? 0;

function withPlaces(
  units: readonly MoveUnit[],
  precedences: readonly Precedence[],
  floor: MoveFloor,
  aside: readonly number[],
  isLeast: boolean,
): Sequence {
  const events = inOrder(units, precedences, new Set(aside));
  const places = new Map<number, readonly SceneBody[] | null>();
  for (const unit of aside) {
    const one = units[unit];
    if (!one || one.isRug) continue;
    places.set(unit, floor.placeAside(one, meanwhile(units, events, places, unit)));
  }
  return { events, aside, places, isLeast };
}

/** Everything that stands at some time while a unit is set aside, but for what never moves. */
function meanwhile(
  units: readonly MoveUnit[],
  events: readonly UnitEvent[],
  places: ReadonlyMap<number, readonly SceneBody[] | null>,
  unit: number,
): SceneBody[] {
  const start = events.findIndex((event) => event.unit === unit && event.does === 'aside');
  const end = events.findIndex((event) => event.unit === unit && event.does === 'back');
  return units.flatMap((other, index): readonly SceneBody[] => {
    if (index === unit || other.isRug) return [];
    const leaves = events.findIndex((event) => event.unit === index);
    const comes = events.findLastIndex((event) => event.unit === index);
    const there: SceneBody[] = [];
    if (leaves > start) there.push(...other.from);
    if (comes < end) there.push(...other.to);
    const place = places.get(index);
    if (place && leaves < end && comes > start) there.push(...place);
    return there;
  });
}

/** What is done earliest where several things can be done: what frees floor, then what stands aside, and asides last. */
const ranks: Readonly<Record<UnitEvent['does'], number>> = { out: 0, back: 1, move: 2, aside: 3, in: 4 };

function inOrder(units: readonly MoveUnit[], precedences: readonly Precedence[], aside: ReadonlySet<number>): UnitEvent[] {
  const edges = eventsBefore(precedences, aside);
  const open = units.flatMap((unit, index): { event: number; does: UnitEvent['does'] }[] => {
    const leaves = 2 * index;
    if (unit.from.length === 0) return [{ event: leaves, does: 'in' }];
    if (unit.to.length === 0) return [{ event: leaves, does: 'out' }];
    if (!aside.has(index)) return [{ event: leaves, does: 'move' }];
    return [
      { event: leaves, does: 'aside' },
      { event: coming(index, aside), does: 'back' },
    ];
  });
  const waits = new Map<number, number>();
  const freed = new Map<number, number[]>();
  for (const [first, second] of edges) {
    waits.set(second, (waits.get(second) ?? 0) + 1);
    const list = freed.get(first);
    if (list) list.push(second);
    else freed.set(first, [second]);
  }
  const events: UnitEvent[] = [];
  while (open.length > 0) {
    let best = -1;
    for (const [i, { event, does }] of open.entries()) {
      if ((waits.get(event) ?? 0) > 0) continue;
      const leader = open[best];
      if (!leader || ranks[does] < ranks[leader.does]) best = i;
    }
    const [next] = best < 0 ? [] : open.splice(best, 1);
    if (!next) throw new Error('what waits for what still goes in a circle');
    for (const event of freed.get(next.event) ?? []) waits.set(event, (waits.get(event) ?? 0) - 1);
    events.push({ unit: next.event >> 1, does: next.does });
  }
  return events;
}
