/**
 * A strict partial order on `count` things in bits: bit q of row p (word p * words + q / 32) says that p and q
 * cannot both stay. Transitive in one direction, as the inversions of a reading order are.
 */
export interface BitRows {
  readonly count: number;
  readonly words: number;
  readonly rows: Uint32Array;
}

/**
 * The largest set in which nothing is comparable (Dilworth), by bipartite matching (Hopcroft and Karp) and the
 * cover that belongs to it (König). Of several largest sets the one whose members have nothing above them.
 * @returns 1 for each member of the set
 */
export function maximumAntichain({ count, words, rows }: BitRows): Uint8Array {
  const rightOf = new Int32Array(count).fill(-1);
  const leftOf = new Int32Array(count).fill(-1);
  const free = allOnes(count, words);
  matchGreedily(count, words, rows, rightOf, leftOf, free);
  for (;;) {
    const layers = layersOf(count, words, rows, rightOf, leftOf, free);
    if (layers === null) break;
    for (let left = 0; left < count; left++) if (rightOf[left] === -1) augment(left, layers, words, rows, rightOf, leftOf, free);
  }
  return independent(count, words, rows, rightOf, leftOf);
}

function allOnes(count: number, words: number): Uint32Array {
  const bits = new Uint32Array(words).fill(0xffffffff);
  for (let i = count; i < words * 32; i++) bits[i >>> 5] = ((bits[i >>> 5] as number) & ~(1 << (i & 31))) >>> 0;
  return bits;
}

const lowestBit = (word: number): number => 31 - Math.clz32(word & -word);

function matchGreedily(count: number, words: number, rows: Uint32Array, rightOf: Int32Array, leftOf: Int32Array, free: Uint32Array): void {
  for (let left = 0; left < count; left++) {
    for (let w = 0; w < words; w++) {
      const candidates = (rows[left * words + w] as number) & (free[w] as number);
      if (candidates === 0) continue;
      const bit = lowestBit(candidates);
      free[w] = ((free[w] as number) & ~(1 << bit)) >>> 0;
      rightOf[left] = w * 32 + bit;
      leftOf[w * 32 + bit] = left;
      break;
    }
  }
}

/** The right-hand sides of shortest alternating ways from free left sides, layer by layer; null: none reaches a free one. */
function layersOf(
  count: number,
  words: number,
  rows: Uint32Array,
  rightOf: Int32Array,
  leftOf: Int32Array,
  free: Uint32Array,
): Uint32Array[] | null {
  const unseen = allOnes(count, words);
  const layers: Uint32Array[] = [];
  let frontier: number[] = [];
  for (let left = 0; left < count; left++) if (rightOf[left] === -1) frontier.push(left);
  while (frontier.length > 0) {
    const layer = new Uint32Array(words);
    for (const left of frontier)
      for (let w = 0; w < words; w++)
        layer[w] = ((layer[w] as number) | ((rows[left * words + w] as number) & (unseen[w] as number))) >>> 0;
    let isReached = false;
    frontier = [];
    for (let w = 0; w < words; w++) {
      const seen = layer[w] as number;
      unseen[w] = ((unseen[w] as number) & ~seen) >>> 0;
      if ((seen & (free[w] as number)) !== 0) isReached = true;
      for (let rest = seen; rest !== 0; rest &= rest - 1) {
        const left = leftOf[w * 32 + lowestBit(rest)] as number;
        if (left !== -1) frontier.push(left);
      }
    }
    layers.push(layer);
    if (isReached) return layers;
  }
  return null;
}

/** Walks one way along the layers and turns it over; each right-hand side is tried once a round. */
function augment(
  start: number,
  layers: readonly Uint32Array[],
  words: number,
  rows: Uint32Array,
  rightOf: Int32Array,
  leftOf: Int32Array,
  free: Uint32Array,
): void {
  const lefts = [start];
  const rights: number[] = [];
  while (lefts.length > 0) {
    const depth = lefts.length - 1;
    const layer = layers[depth] as Uint32Array;
    const right = takeFrom(layer, lefts[depth] as number, words, rows);
    if (right === -1) {
      lefts.pop();
      rights.pop();
      continue;
    }
    const owner = leftOf[right] as number;
    if (owner !== -1) {
      if (depth + 1 === layers.length) continue;
      rights.push(right);
      lefts.push(owner);
      continue;
    }
    rights.push(right);
    free[right >>> 5] = ((free[right >>> 5] as number) & ~(1 << (right & 31))) >>> 0;
    lefts.forEach((left, i) => {
      const its = rights[i] as number;
      rightOf[left] = its;
      leftOf[its] = left;
    });
    return;
  }
}

function takeFrom(layer: Uint32Array, left: number, words: number, rows: Uint32Array): number {
  for (let w = 0; w < words; w++) {
    const candidates = (rows[left * words + w] as number) & (layer[w] as number);
    if (candidates === 0) continue;
    const bit = lowestBit(candidates);
    layer[w] = ((layer[w] as number) & ~(1 << bit)) >>> 0;
    return w * 32 + bit;
  }
  return -1;
}

/** König: what alternating ways from free left sides reach on the left and not on the right. */
function independent(count: number, words: number, rows: Uint32Array, rightOf: Int32Array, leftOf: Int32Array): Uint8Array {
  const unseen = allOnes(count, words);
  const isReached = new Uint8Array(count);
  const open: number[] = [];
  for (let left = 0; left < count; left++) if (rightOf[left] === -1) open.push(left);
  for (let left = open.pop(); left !== undefined; left = open.pop()) {
    isReached[left] = 1;
    for (let w = 0; w < words; w++) {
      const seen = (rows[left * words + w] as number) & (unseen[w] as number);
      unseen[w] = ((unseen[w] as number) & ~seen) >>> 0;
      for (let rest = seen; rest !== 0; rest &= rest - 1) {
        const owner = leftOf[w * 32 + lowestBit(rest)] as number;
        if (owner !== -1) open.push(owner);
      }
    }
  }
  const stays = new Uint8Array(count);
  for (let i = 0; i < count; i++) stays[i] = isReached[i] === 1 && (((unseen[i >>> 5] as number) >>> (i & 31)) & 1) === 1 ? 1 : 0;
  return stays;
}
