import { useLayoutEffect } from 'react';

const counts = new Map<string, number>();

/**
 * Marks the whole page with `data-<name>` while something of that kind is on it. A style that asks `:has()` of the page
 * instead would have the styles of everything worked out anew with every row that comes or goes, many times in a drag.
 */
export function useRootMark(name: string, isOn: boolean): void {
  useLayoutEffect(() => {
    if (!isOn) return;
    count(name, 1);
    return () => count(name, -1);
  }, [name, isOn]);
}

function count(name: string, by: 1 | -1): void {
  const now = (counts.get(name) ?? 0) + by;
  counts.set(name, now);
  document.documentElement.toggleAttribute(`data-${name}`, now > 0);
}
