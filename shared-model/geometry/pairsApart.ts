import type { PickLimit } from './pickMost.ts';

/** Shares smaller than this are none. */
const NONE = 1e-6;

/**
 * Which two things do not go together, of `count` of them, as limits of one have told. Things of which any two do not go
 * together are a limit of one as well, whichever limits told of each two: one such limit cuts off more of a choice in
 * parts than all it came from, which let three halves of three pairs pass.
 */
export class PairsApart {
  private readonly words: number;
  /** For each thing one bit for every other it does not go with. */
  private readonly apart: Uint32Array[];

  constructor(private readonly count: number) {
    this.words = Math.max(1, Math.ceil(count / 32));
    this.apart = Array.from({ length: count }, () => new Uint32Array(this.words));
  }

  /** Takes in a limit; only those of one say something of pairs. */
  add({ members, most }: PickLimit): void {
    if (most !== 1) return;
    const all = new Uint32Array(this.words);
    for (const k of members) setBit(all, k);
    for (const k of members) {
      const mine = this.apart[k] as Uint32Array;
      for (let w = 0; w < this.words; w++) mine[w] = (mine[w] as number) | (all[w] as number);
      clearBit(mine, k);
    }
  }

  /** The limits, those of one widened by whatever goes with none of their members; no two of them the same. */
  widened(limits: readonly PickLimit[]): PickLimit[] {
    const seen = new Set<string>();
    return limits.flatMap((limit): PickLimit[] => {
      const wide = limit.most === 1 ? { members: this.widest(limit.members), most: 1 } : limit;
      const key = `${wide.most}: ${wide.members.join()}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [wide];
    });
  }

  /** Limits of one that a choice in parts takes more than `1 + worth` of, each looked for from one of the things it takes. */
  brokenBy(shares: ArrayLike<number>, worth: number): PickLimit[] {
    const share = (k: number): number => shares[k] as number;
    const taken = Array.from({ length: this.count }, (_, k) => k)
      .filter((k) => share(k) > NONE)
      .sort((p, q) => share(q) - share(p) || p - q);
    const broken = taken.flatMap((first): PickLimit[] => {
      const left = this.beside([first]);
      const members = [first];
      let total = share(first);
      for (const k of taken)
        if (hasBit(left, k)) {
          members.push(k);
          total += share(k);
          this.narrow(left, k);
        }
      return total > 1 + worth ? [{ members, most: 1 }] : [];
    });
    return this.widened(broken);
  }

  /** The members, and as many more that go with none of them nor with each other; ascending. */
  private widest(members: readonly number[]): number[] {
    const left = this.beside(members);
    const all = [...members];
    for (let next = this.friendliest(left); next !== null; next = this.friendliest(left)) {
      all.push(next);
      this.narrow(left, next);
    }
    return all.sort((p, q) => p - q);
  }

  /** Of those left the one that leaves most of the others. */
  private friendliest(left: Uint32Array): number | null {
    let best: number | null = null;
    let most = -1;
    for (let w = 0; w < this.words; w++)
      for (let word = left[w] as number; word !== 0; word &= word - 1) {
        const k = w * 32 + 31 - Math.clz32(word & -word);
        const leaves = this.countShared(left, k);
        if (leaves <= most) continue;
        most = leaves;
        best = k;
      }
    return best;
  }

  private beside(members: readonly number[]): Uint32Array {
    const left = new Uint32Array(this.words).fill(0xffff_ffff);
    for (const k of members) this.narrow(left, k);
    return left;
  }

  private narrow(left: Uint32Array, k: number): void {
    const mine = this.apart[k] as Uint32Array;
    for (let w = 0; w < this.words; w++) left[w] = (left[w] as number) & (mine[w] as number);
  }

  private countShared(left: Uint32Array, k: number): number {
    const mine = this.apart[k] as Uint32Array;
    let sum = 0;
    for (let w = 0; w < this.words; w++) sum += countBits((left[w] as number) & (mine[w] as number));
    return sum;
  }
}

const setBit = (bits: Uint32Array, k: number): void => {
  bits[k >>> 5] = (bits[k >>> 5] as number) | (1 << (k & 31));
};
const clearBit = (bits: Uint32Array, k: number): void => {
  bits[k >>> 5] = (bits[k >>> 5] as number) & ~(1 << (k & 31));
};
const hasBit = (bits: Uint32Array, k: number): boolean => (((bits[k >>> 5] as number) >>> (k & 31)) & 1) === 1;

/** Ones of a word of 32 bits: added up by twos, fours and eights. */
function countBits(word: number): number {
  const twos = word - ((word >>> 1) & 0x5555_5555);
  const fours = (twos & 0x3333_3333) + ((twos >>> 2) & 0x3333_3333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f_0f0f, 0x0101_0101) >>> 24;
}
