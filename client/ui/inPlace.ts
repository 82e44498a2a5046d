/**
 * For lists whose entries have no id and never change places while they are shown: each is known by its place, from 0.
 * Not for lists that are typed in or sorted.
 */
export const inPlace = <T>(entries: readonly T[]): { readonly place: number; readonly entry: T }[] =>
  entries.map((entry, place) => ({ place, entry }));

/** So many places in a row, from 0, where what stands there is nothing but its place. */
export const places = (count: number): number[] => Array.from({ length: count }, (_, place) => place);
