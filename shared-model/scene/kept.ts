/** `make`, asked once for each object: what is made of a frozen thing is the same as long as the thing is. */
export function keptWith<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, V>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make(key);
    kept.set(key, made);
    return made;
  };
}

/** The list of before where it holds the very same things, else the new one. */
export const sameList = <T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] =>
  before && isSameList(before, now) ? before : now;

export const isSameList = (p: readonly unknown[], q: readonly unknown[]): boolean =>
  p.length === q.length && p.every((entry, index) => entry === q[index]);

/** The map of before where it holds the very same entries in the same order, else the new one. */
export function sameMap<V>(before: ReadonlyMap<string, V> | undefined, now: ReadonlyMap<string, V>): ReadonlyMap<string, V> {
  if (before?.size !== now.size) return now;
  const entries = now.entries();
  for (const [key, value] of before) {
    const [otherKey, other] = entries.next().value as [string, V];
    if (key !== otherKey || value !== other) return now;
  }
  return before;
}
