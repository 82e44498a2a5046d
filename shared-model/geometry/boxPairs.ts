import type { Box } from './polygon.ts';

/** Calls back with the indices (i < j) of every two boxes that share more than a line. A sweep along x. */
export function eachBoxPair(boxes: readonly Box[], visit: (i: number, j: number) => void): void {
  const order = boxes.map((_, i) => i).sort((i, j) => (boxes[i] as Box).minX - (boxes[j] as Box).minX || i - j);
  const active: number[] = [];
  for (const i of order) {
    const box = boxes[i] as Box;
    let still = 0;
    for (let k = 0; k < active.length; k++) {
      const j = active[k] as number;
      const other = boxes[j] as Box;
      if (other.maxX <= box.minX) continue;
      active[still++] = j;
      if (other.minY < box.maxY && box.minY < other.maxY) visit(Math.min(i, j), Math.max(i, j));
    }
    active[still] = i;
    active.length = still + 1;
  }
}

/** Indices of boxes in groups: boxes that share more than a line are of one, and so are those that a third joins. */
export function boxGroups(boxes: readonly Box[]): number[][] {
  const head = boxes.map((_, i) => i);
  const headOf = (i: number): number => {
    let at = i;
    while (head[at] !== at) at = head[at] = head[head[at] as number] as number;
    return at;
  };
  eachBoxPair(boxes, (i, j) => {
    head[headOf(j)] = headOf(i);
  });
  const groups = new Map<number, number[]>();
  boxes.forEach((_, i) => {
    const group = groups.get(headOf(i));
    if (group) group.push(i);
    else groups.set(headOf(i), [i]);
  });
  return [...groups.values()];
}
