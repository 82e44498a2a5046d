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

/** How many states are looked at, and how many sets are kept. */
const LOOKS = 4_000;
const SETS = 64;

/**
 * The units to set aside first so that no two wait for each other: a least feedback vertex set of what waits for what.
 * A unit set aside leaves at one time and comes at another; all others do both at once. Exact: every circle loses one of its
 * units, so the shortest circle is branched on, with one more unit allowed each time, until a set is found.
 */
export function leastAside(units: number, precedences: readonly Precedence[], looks = LOOKS): AsideSets {
  let left = looks;
  for (let size = 0; size <= units; size++) {
    const sets: number[][] = [];
    const search = (aside: ReadonlySet<number>, kept: ReadonlySet<number>): void => {
      if (sets.length >= SETS || left <= 0) return;
      left -= 1;
      const circle = shortestCircle(units, precedences, aside);
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
    if (left <= 0) break;
  }
  return { sets: [someSet(units, precedences)], isLeast: false };
}

/** A set that does, none of which can be left out; not always the least. */
function someSet(units: number, precedences: readonly Precedence[]): number[] {
  const aside = new Set<number>();
  for (let circle = shortestCircle(units, precedences, aside); circle; circle = shortestCircle(units, precedences, aside)) {
    const degree = (unit: number): number => precedences.filter(({ first, second }) => first === unit || second === unit).length;
    aside.add(circle.reduce((best, unit) => (degree(unit) > degree(best) ? unit : best)));
  }
  for (const unit of [...aside]) {
    aside.delete(unit);
    if (shortestCircle(units, precedences, aside)) aside.add(unit);
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
function shortestCircle(units: number, precedences: readonly Precedence[], aside: ReadonlySet<number>): number[] | null {
  const next: number[][] = Array.from({ length: 2 * units }, () => []);
  for (const [first, then] of eventsBefore(precedences, aside)) next[first]?.push(then);
  let shortest: number[] | null = null;
  for (let start = 0; start < 2 * units; start++) {
    const circle = circleFrom(start, next, shortest?.length ?? Infinity);
    if (circle && (!shortest || circle.length < shortest.length)) shortest = circle;
  }
  const through = shortest && [...new Set(shortest.map((event) => event >> 1))];
  return through?.filter((unit) => !aside.has(unit)).sort((p, q) => p - q) ?? null;
}

function circleFrom(start: number, next: readonly (readonly number[])[], shorterThan: number): number[] | null {
  const back = new Map<number, number>();
  let front = [start];
  for (let long = 1; front.length > 0 && long < shorterThan; long++) {
    const further: number[] = [];
    for (const event of front)
      for (const then of next[event] as readonly number[]) {
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
