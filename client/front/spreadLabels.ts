/**
 * Moves labels apart along one axis as little as needed, keeping their order.
 * @param wanted px of each label's middle
 * @param size px that a label takes
 * @returns px of each middle, in the order given; within [from, to] while there is room.
 */
export function spreadLabels(wanted: readonly number[], size: number, from: number, to: number): number[] {
  const order = wanted.map((at, index) => ({ at, index })).sort((p, q) => p.at - q.at || p.index - q.index);
  const placed: number[] = [];
  let least = from + size / 2;
  for (const { at } of order) {
    const here = Math.max(at, least);
    placed.push(here);
    least = here + size;
  }
  let most = to - size / 2;
  for (let i = placed.length - 1; i >= 0; i--) {
    placed[i] = Math.min(placed[i] as number, most);
    most = (placed[i] as number) - size;
  }
  const result: number[] = [];
  order.forEach(({ index }, i) => {
    result[index] = placed[i] as number;
  });
  return result;
}
