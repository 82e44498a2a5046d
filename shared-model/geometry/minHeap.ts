/** A heap of values by key, least first. */
export class MinHeap<T> {
  private readonly keys: number[] = [];
  private readonly values: T[] = [];

  get size(): number {
    return this.keys.length;
  }

  push(key: number, value: T): void {
    const { keys, values } = this;
    let at = keys.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if ((keys[above] as number) <= key) break;
      keys[at] = keys[above] as number;
      values[at] = values[above] as T;
      at = above;
    }
    keys[at] = key;
    values[at] = value;
  }

  pop(): { key: number; value: T } | null {
    const { keys, values } = this;
    const last = keys.length - 1;
    if (last < 0) return null;
    const top = { key: keys[0] as number, value: values[0] as T };
    const key = keys.pop() as number;
    const value = values.pop() as T;
    if (last === 0) return top;
    let at = 0;
    for (let below = 1; below < last; below = 2 * at + 1) {
      if (below + 1 < last && (keys[below + 1] as number) < (keys[below] as number)) below++;
      if ((keys[below] as number) >= key) break;
      keys[at] = keys[below] as number;
      values[at] = values[below] as T;
      at = below;
    }
    keys[at] = key;
    values[at] = value;
    return top;
  }
}
