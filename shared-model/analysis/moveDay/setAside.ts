/** One thing that has to happen before another: leaving a place, or coming to one, of two units by their index. */
export interface Precedence {
  readonly first: number;
  readonly second: number;
  /** off: the place it leaves; on: the place it comes to. */
  readonly kind: 'off-on' | 'off-off' | 'on-on';
}

export interface AsideSets {
  /** Every set found of the least size, each ascending. One empty set: nothing goes in a circle. */
  readonly sets: readonly (readonly number[])[];
  /** No smaller set would do. False: the search was given up, and a set that does was taken. */
  readonly isLeast: boolean;
}

/** How many arrows are followed in the search (some hundred ms), and how many sets are kept. */
const STEPS = 5_000_000;
const SETS = 64;

/** Arrows followed so far. */
interface Tally {
  steps: number;
}

/**
 * The units to set aside first so that no two wait for each other: a least feedback vertex set of what waits for what.
 * A unit set aside leaves at one time and comes at another; all others do both at once. Exact: every circle loses one of its
 * units, so the shortest circle is branched on, with one more unit allowed each time, until a set is found.
 */
export function leastAside(units: number, precedences: readonly Precedence[], steps = STEPS): AsideSets {
  const tally: Tally = { steps: 0 };
  for (let size = 0; size <= units; size++) {
    const sets: number[][] = [];
    const search = (aside: ReadonlySet<number>, kept: ReadonlySet<number>): void => {
      if (sets.length >= SETS || tally.steps > steps) return;
      const circle = shortestCircle(units, precedences, aside, tally);
      if (!circle) {
        sets.push([...aside].sort((p, q) => p - q));
        return;
      }
      if (aside.size === size) return;
      const keep = new Set(kept);
      for (const unit of circle) {
        if (keep.has(unit)) continue;
        search(new Set(aside).add(unit), keep);
        // Sets with it have all been looked at.
        keep.add(unit);
      }
    };
    search(new Set(), new Set());
    if (sets.length > 0) return { sets, isLeast: true };
    if (tally.steps > steps) break;
  }
  return { sets: [someSet(units, precedences)], isLeast: false };
}

/** A set that does, none of which can be left out; not always the least. */
function someSet(units: number, precedences: readonly Precedence[]): number[] {
  const aside = new Set<number>();
  const find = (): number[] | null => shortestCircle(units, precedences, aside, { steps: 0 });
  for (let circle = find(); circle; circle = find()) {
    const degree = (unit: number): number => precedences.filter(({ first, second }) => first === unit || second === unit).length;
    aside.add(circle.reduce((best, unit) => (degree(unit) > degree(best) ? unit : best)));
  }
  for (const unit of [...aside]) {
    aside.delete(unit);
    if (find()) aside.add(unit);
  }
  return [...aside].sort((p, q) => p - q);
}

/** Event of a unit: it leaves, it comes; one and the same unless it is set aside. */
const leaving = (unit: number): number => 2 * unit;
export const coming = (unit: number, aside: ReadonlySet<number>): number => (aside.has(unit) ? 2 * unit + 1 : 2 * unit);

/** Which event comes before which. Two events of a unit set aside are in order too. */
export function eventsBefore(precedences: readonly Precedence[], aside: ReadonlySet<number>): [number, number][] {
  const edges = precedences.map(({ first, second, kind }): [number, number] => [
    kind === 'on-on' ? coming(first, aside) : leaving(first),
    kind === 'off-off' ? leaving(second) : coming(second, aside),
  ]);
  for (const unit of aside) edges.push([leaving(unit), coming(unit, aside)]);
  return edges;
}

/** Units on a shortest circle of events that are not set aside yet; null: no circle. */
function shortestCircle(units: number, precedences: readonly Precedence[], aside: ReadonlySet<number>, tally: Tally): number[] | null {
  const next: number[][] = Array.from({ length: 2 * units }, () => []);
  for (const [first, second] of eventsBefore(precedences, aside)) next[first]?.push(second);
  tally.steps += precedences.length;
  const isLoose = looseEvents(next);
  let shortest: number[] | null = null;
  for (let start = 0; start < 2 * units; start++) {
    if (isLoose[start]) continue;
    const circle = circleFrom(start, next, shortest?.length ?? Infinity, tally);
    if (circle && (!shortest || circle.length < shortest.length)) shortest = circle;
    // None is shorter than two that wait for each other.
    if (shortest?.length === 2) break;
  }
  const through = shortest && [...new Set(shortest.map((event) => event >> 1))];
  return through?.filter((unit) => !aside.has(unit)).sort((p, q) => p - q) ?? null;
}

/** Events that nothing in a circle leads to: they are on none. */
function looseEvents(next: readonly (readonly number[])[]): boolean[] {
  const waits = next.map(() => 0);
  for (const list of next) for (const event of list) waits[event] = (waits[event] as number) + 1;
  const isLoose = next.map(() => false);
  const free = waits.flatMap((count, event) => (count === 0 ? [event] : []));
  for (const event of free) {
    isLoose[event] = true;
    for (const then of next[event] as readonly number[]) {
      waits[then] = (waits[then] as number) - 1;
      if (waits[then] === 0) free.push(then);
    }
  }
  return isLoose;
}

function circleFrom(start: number, next: readonly (readonly number[])[], shorterThan: number, tally: Tally): number[] | null {
  const back = new Map<number, number>();
  let front = [start];
  for (let long = 1; front.length > 0 && long < shorterThan; long++) {
    const further: number[] = [];
    for (const event of front)
      for (const then of next[event] as readonly number[]) {
        tally.steps += 1;
        if (then === start) return pathTo(event, start, back);
        if (back.has(then)) continue;
        back.set(then, event);
        further.push(then);
      }
    front = further;
  }
  return null;
}

function pathTo(event: number, start: number, back: ReadonlyMap<number, number>): number[] {
  const path = [event];
  for (let at = event; at !== start; ) {
    at = back.get(at) as number;
    path.push(at);
  }
  return path;
}
