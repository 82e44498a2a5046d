import { describe, expect, it } from 'vitest';
import { shareMats, shareSeats } from '#model/measures/seatSizes.ts';

describe('sharing out mats', () => {
  it.each([
    [[8, 9, 7], 6, [2, 2, 2]],
    [[8, 9, 7], 0, [0, 0, 0]],
    [[1, 1], 5, [1, 1]],
    [[3, 3], 3, [2, 1]],
    [[], 4, []],
  ])('%j children, %i mats: %j', (counts, mats, shares) => expect(shareMats(counts, mats)).toEqual(shares));
});

describe('sharing out seats by size', () => {
  it('gives a seat to the group whose range ends first', () => {
    const wishes = [
      { mark: 3, needed: 2 },
      { mark: 1, needed: 2 },
    ];
    expect(shareSeats(wishes, [{ mark: 2, seats: 3 }], 1)).toEqual([1, 2]);
  });
  it('meets as many wishes as trying every way does', () => {
    const marks = [0, 1, 2, 3];
    for (const a of marks)
      for (const b of marks)
        for (const seats of marks.flatMap((p) => marks.map((q) => [p, q]))) {
          const wishes = [
            { mark: a, needed: 1 },
            { mark: b, needed: 1 },
          ];
          const total = shareSeats(
            wishes,
            seats.map((mark) => ({ mark, seats: 1 })),
            1,
          ).reduce((sum, got) => sum + got, 0);
          const suits = (wish: number, seat: number): boolean => Math.abs((wishes[wish]?.mark ?? 9) - (seats[seat] ?? 99)) <= 1;
          const both = (suits(0, 0) && suits(1, 1)) || (suits(0, 1) && suits(1, 0));
          const one = [0, 1].some((w) => [0, 1].some((s) => suits(w, s)));
          expect(total, `${a}, ${b} on ${seats}`).toBe(both ? 2 : one ? 1 : 0);
        }
  });
});
