/** What was read from a part of the document, kept until that part changes. */
export interface Memory {
  /** @param compute gets what was read before the change, so that it can hand back what is still the same. */
  of<T>(part: object, compute: (before: T | undefined) => T): T;
  /** These parts changed. */
  forget(parts: Iterable<object>): void;
}

interface Cell {
  isStale: boolean;
  value: unknown;
}

export function createMemory(): Memory {
  const cells = new WeakMap<object, Cell>();
  return {
    of<T>(part: object, compute: (before: T | undefined) => T): T {
      const cell = cells.get(part);
      if (cell && !cell.isStale) return cell.value as T;
      const value = compute(cell?.value as T | undefined);
      cells.set(part, { isStale: false, value });
      return value;
    },
    forget(parts) {
      for (const part of parts) {
        const cell = cells.get(part);
        if (cell) cell.isStale = true;
      }
    },
  };
}

/** The list from before where it holds the very same entries, else the new one, frozen. */
export function sameList<T>(before: readonly T[] | undefined, now: T[]): T[] {
  if (before && before.length === now.length && before.every((entry, index) => entry === now[index])) return before as T[];
  return Object.freeze(now) as T[];
}

/** The object from before where it holds the very same fields, else the new one, frozen. */
export function sameFields<T extends object>(before: T | undefined, now: T): T {
  if (before) {
    const keys = Object.keys(now) as (keyof T)[];
    if (keys.length === Object.keys(before).length && keys.every((key) => Object.hasOwn(before, key) && before[key] === now[key]))
      return before;
  }
  return Object.freeze(now);
}
