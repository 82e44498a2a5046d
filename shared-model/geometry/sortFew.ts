/**
 * Sorts the numbers from one index up to, not including, another in place, ascending: for a few, or where nearly all are in
 * order. The engine's own sort makes lists of its own for the collector.
 */
export function sortFew(list: number[] | Float64Array, from: number, to: number): void {
  for (let k = from + 1; k < to; k++) {
    const value = list[k] as number;
    let at = k;
    for (; at > from && (list[at - 1] as number) > value; at--) list[at] = list[at - 1] as number;
    list[at] = value;
  }
}
