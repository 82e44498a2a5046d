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
    const all = this.setOf(members);
    for (const k of members) {
      const mine = this.apart[k] as Uint32Array;
      for (let w = 0; w < this.words; w++) mine[w] = (mine[w] as number) | (all[w] as number);
      clearBit(mine, k);
    }
  }

  /**
   * The limits, each widened by what may be added to it with nothing lost: to those of one whatever goes with none of their
   * members, to the others whatever leaves, when it is chosen, one fewer of them free. No two of them the same.
   */
  widened(limits: readonly PickLimit[]): PickLimit[] {
    const seen = new Set<string>();
    return limits.flatMap(({ members, most }): PickLimit[] => {
      const wide = most === 1 ? this.widest(members) : most > 1 ? this.lifted(members, most) : members;
      const key = `${most}: ${wide.join()}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ members: wide, most }];
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

  /**
   * Members of a limit of several, and things of which each leaves, when it is chosen, no more than `most` - 1 of the
   * members free: those it goes with are then no more than so many sets of which any two do not go together. Ascending.
   */
  private lifted(members: readonly number[], most: number): number[] {
    const all = this.setOf(members);
    const lifted = [...members];
    // Choices of `most` members: what goes with all of one of them is not added. Few of them tell of nearly all that is not.
    const whole: Uint32Array[] = [];
    for (const { k } of this.byHits(all)) {
      const mine = this.apart[k] as Uint32Array;
      if (whole.some((choice) => !meets(choice, mine))) continue;
      const free = all.slice();
      for (let w = 0; w < this.words; w++) free[w] = (free[w] as number) & ~(mine[w] as number);
      const choice = this.choiceOf(free, most);
      if (choice) whole.push(choice);
      else if (this.isInSets(free, most - 1)) {
        lifted.push(k);
        setBit(all, k);
      }
    }
    return lifted.sort((p, q) => p - q);
  }

  /** Things outside a set that do not go with some of it, those first that go with the fewest. */
  private byHits(all: Uint32Array): { readonly k: number; readonly hits: number }[] {
    const found: { k: number; hits: number }[] = [];
    for (let k = 0; k < this.count; k++) {
      const hits = hasBit(all, k) ? 0 : this.countShared(all, k);
      if (hits > 0) found.push({ k, hits });
    }
    return found.sort((p, q) => q.hits - p.hits || p.k - q.k);
  }

  /** So many of a set that all go together, taken one after the other, those first that leave most; null: not found. */
  private choiceOf(set: Uint32Array, most: number): Uint32Array | null {
    const left = set.slice();
    const choice = new Uint32Array(this.words);
    for (let taken = 0; taken < most; taken++) {
      const next = this.loneliest(left);
      if (next === null) return null;
      setBit(choice, next);
      clearBit(left, next);
      const mine = this.apart[next] as Uint32Array;
      for (let w = 0; w < this.words; w++) left[w] = (left[w] as number) & ~(mine[w] as number);
    }
    return choice;
  }

  /** True when the set was found to be no more than so many sets of which any two do not go together. */
  private isInSets(set: Uint32Array, most: number): boolean {
    const left = set.slice();
    for (let count = 0; count < most; count++) {
      const first = this.loneliest(left);
      if (first === null) return true;
      const rest = left.slice();
      for (let next: number | null = first; next !== null; next = this.friendliest(rest)) {
        clearBit(left, next);
        this.narrow(rest, next);
      }
    }
    return left.every((word) => word === 0);
  }

  /** Of those left the one that the fewest of the others do not go with. */
  private loneliest(left: Uint32Array): number | null {
    let best: number | null = null;
    let least = Infinity;
    this.each(left, (k) => {
      const beside = this.countShared(left, k);
      if (beside >= least) return;
      least = beside;
      best = k;
    });
    return best;
  }

  /** Of those left the one that leaves most of the others. */
  private friendliest(left: Uint32Array): number | null {
    let best: number | null = null;
    let most = -1;
    this.each(left, (k) => {
      const leaves = this.countShared(left, k);
      if (leaves <= most) return;
      most = leaves;
      best = k;
    });
    return best;
  }

  private each(set: Uint32Array, visit: (k: number) => void): void {
    for (let w = 0; w < this.words; w++)
      for (let word = set[w] as number; word !== 0; word &= word - 1) visit(w * 32 + 31 - Math.clz32(word & -word));
  }

  private setOf(members: readonly number[]): Uint32Array {
    const set = new Uint32Array(this.words);
    for (const k of members) setBit(set, k);
    return set;
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

const meets = (p: Uint32Array, q: Uint32Array): boolean => {
  for (let w = 0; w < p.length; w++) if (((p[w] as number) & (q[w] as number)) !== 0) return true;
  return false;
};

/** Ones of a word of 32 bits: added up by twos, fours and eights. */
function countBits(word: number): number {
  const twos = word - ((word >>> 1) & 0x5555_5555);
  const fours = (twos & 0x3333_3333) + ((twos >>> 2) & 0x3333_3333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f_0f0f, 0x0101_0101) >>> 24;
}
