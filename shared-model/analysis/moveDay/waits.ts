export type ReducedWaits = ReadonlyMap<string, readonly string[]>;

interface Waiting {
  readonly id: string;
  readonly waits: readonly string[];
}

/** What each step waits for, without what those steps wait for themselves. In the order of the steps; nothing may go in a circle. */
export function reduceWaits(steps: readonly Waiting[]): ReducedWaits {
  const closed = closeOver(steps);
  return new Map(
    steps.map(({ id, waits }) => {
      const own = new Set(waits.filter((wait) => wait !== id));
      const direct = steps.map((step) => step.id).filter((wait) => own.has(wait));
      return [id, direct.filter((wait) => !direct.some((other) => other !== wait && closed.get(other)?.has(wait)))];
    }),
  );
}

/** All that each step waits for, directly or not. */
function closeOver(steps: readonly Waiting[]): Map<string, Set<string>> {
  const direct = new Map(steps.map(({ id, waits }) => [id, waits]));
  const closed = new Map<string, Set<string>>();
  const of = (id: string): Set<string> => {
    const known = closed.get(id);
    if (known) return known;
    const all = new Set<string>();
    closed.set(id, all);
    for (const wait of direct.get(id) ?? []) {
      all.add(wait);
      for (const further of of(wait)) all.add(further);
    }
    return all;
  };
  for (const { id } of steps) of(id);
  return closed;
}

/** Steps that cannot be done as long as one of these is not: all that wait for it, directly or not, in order. */
export function waitingFor(steps: readonly Waiting[], id: string): string[] {
  const closed = closeOver(steps);
  return steps.filter((step) => closed.get(step.id)?.has(id)).map((step) => step.id);
}
