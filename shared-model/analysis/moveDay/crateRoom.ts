/** Long and wide (mm), from above. */
export type Size = readonly [number, number];

interface Box {
  readonly x: number;
  readonly y: number;
  readonly long: number;
  readonly wide: number;
}

/** Places that are looked at before it is said that there is no room. */
const MOST_TRIES = 60_000;
/** mm that rounding may cost. */
const ROUNDING = 1e-6;

/**
 * True where so many rectangles lie beside one another in layers of one size, with quarter turns, all at once: mm. A packing can
 * be pushed down and to the left until each lies at sums of others' sides (normal patterns: Herz 1972), so only those places are
 * tried. Says no where the tries do not suffice, which takes more of them than a crate holds.
 */
export function haveRoom(sizes: readonly Size[], layer: Size, layers: number): boolean {
  const area = sizes.reduce((sum, [long, wide]) => sum + long * wide, 0);
  if (area > layer[0] * layer[1] * layers + ROUNDING) return false;
  // The largest first: what has no room shows soon.
  const order = [...sizes].sort((p, q) => q[0] * q[1] - p[0] * p[1]);
  const laid: Box[][] = Array.from({ length: layers }, () => []);
  const [xs, ys] = [sumsUpTo(order, layer[0]), sumsUpTo(order, layer[1])];
  let left = MOST_TRIES;

  const lay = (k: number): boolean => {
    const size = order[k];
    if (!size) return true;
    for (const boxes of laid) {
      for (const [long, wide] of turnsOf(size))
        for (const y of ys)
          for (const x of xs) {
            if (left-- <= 0) return false;
            const box = { x, y, long, wide };
            if (x + long > layer[0] + ROUNDING || y + wide > layer[1] + ROUNDING) break;
            if (boxes.some((other) => overlap(box, other))) continue;
            boxes.push(box);
            if (lay(k + 1)) return true;
            boxes.pop();
          }
      // Empty layers are all the same.
      if (boxes.length === 0) break;
    }
    return false;
  };
  return lay(0);
}

const turnsOf = ([long, wide]: Size): readonly Size[] =>
  long === wide
    ? [[long, wide]]
    : [
        [long, wide],
        [wide, long],
      ];

const overlap = (p: Box, q: Box): boolean =>
  p.x < q.x + q.long - ROUNDING && q.x < p.x + p.long - ROUNDING && p.y < q.y + q.wide - ROUNDING && q.y < p.y + p.wide - ROUNDING;

/** Every sum of some of the sides, each rectangle once, that is less than `most`; ascending. */
function sumsUpTo(sizes: readonly Size[], most: number): number[] {
  let sums = new Set([0]);
  for (const size of sizes) {
    const next = new Set(sums);
    for (const sum of sums) for (const side of size) if (sum + side < most) next.add(Math.round((sum + side) * 1000) / 1000);
    sums = next;
  }
  return [...sums].sort((p, q) => p - q);
}
