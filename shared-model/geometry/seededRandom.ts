/**
 * A stream of numbers from 0 up to 1 (1 never comes) that is the same on every device: 32-bit integers only
 * (the generator known as mulberry32, public domain).
 */
export function seededRandom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The same things in an order drawn anew. */
export function shuffled<T>(list: readonly T[], random: () => number): T[] {
  return list
    .map((one) => ({ one, at: random() }))
    .sort((p, q) => p.at - q.at)
    .map(({ one }) => one);
}
