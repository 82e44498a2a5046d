import type { PickLimit } from '../geometry/pickMost.ts';

/** Shares smaller than this are none. */
const NONE = 1e-6;

/**
 * Draws things by their shares, the greater the likelier, as long as the limits allow; no more fits in the end of those
 * that have a share. Indices, in the order drawn.
 */
export function drawChoice(shares: ArrayLike<number>, limits: readonly PickLimit[], random: () => number): number[] {
  const order: { k: number; at: number }[] = [];
  for (let k = 0; k < shares.length; k++) {
    const share = shares[k] as number;
    // The first of independent clocks that run as fast as the shares are.
    if (share > NONE) order.push({ k, at: -Math.log(1 - random()) / share });
  }
  order.sort((p, q) => p.at - q.at);
  const left = limits.map(({ most }) => most);
  const limitsOf = new Map<number, number[]>(order.map(({ k }) => [k, []]));
  limits.forEach(({ members }, i) => {
    for (const k of members) limitsOf.get(k)?.push(i);
  });
  const drawn: number[] = [];
  for (const { k } of order) {
    const mine = limitsOf.get(k) ?? [];
    if (mine.some((i) => (left[i] as number) <= 0)) continue;
    for (const i of mine) left[i] = (left[i] as number) - 1;
    drawn.push(k);
  }
  return drawn;
}
