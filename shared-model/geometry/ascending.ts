import { Scratch } from './scratch.ts';

const space = new Scratch();

const INDEX_SPAN = 2 ** 20;
/** Values are told apart to this at first. With the index in the lower digits both fit into a double up to 8e7. */
const STEP = 0.01;

/**
 * Indices 0 to `count` - 1 by ascending value, where `isBefore` decides between values that are nearly the same. Sorted
 * as plain numbers, since the engine's sort of anything else makes several lists for the collector.
 *
 * The list is used again by the next call.
 */
export function ascendingOrder(count: number, value: (index: number) => number, isBefore: (i: number, j: number) => boolean): Int32Array {
  const keys = space.lengths('keys', count);
  for (let k = 0; k < count; k++) keys[k] = Math.round(value(k) / STEP) * INDEX_SPAN + k;
  keys.sort();
  const order = space.integers('order', count);
  for (let k = 0; k < count; k++) {
    const key = keys[k] as number;
    const index = key - Math.floor(key / INDEX_SPAN) * INDEX_SPAN;
    let at = k;
    for (; at > 0 && isBefore(index, order[at - 1] as number); at--) order[at] = order[at - 1] as number;
    order[at] = index;
  }
  return order;
}
