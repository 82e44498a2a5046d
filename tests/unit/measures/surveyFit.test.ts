import { describe, expect, it } from 'vitest';
import { fitSurvey, type TapedWall } from '#model/measures/surveyFit.ts';

const right = (length: number | null): TapedWall => ({ length, turn: 90, isTurnFree: false });
const bent = (length: number, side: 1 | -1 = 1): TapedWall => ({ length, turn: side * 90, isTurnFree: true });
const box = [right(4000), right(3000), right(4000), right(3000)];

function fitted(...given: Parameters<typeof fitSurvey>) {
  const found = fitSurvey(...given);
  if (!found) throw new Error('nothing was fitted');
  return found;
}

describe('corners from what was taped', () => {
  it('leaves a walk that closes as it is', () => {
    const found = fitted(box, [{ from: 0, to: 2, length: 5000 }]);
    expect(found.misfit).toBeNull();
    expect(found.redundancy).toBe(4);
    for (const { change } of [...found.walls, ...found.turns, ...found.diagonals]) expect(change).toBeCloseTo(0, 6);
    expect(found.corners[2]?.x).toBeCloseTo(4000, 6);
    expect(found.corners[2]?.y).toBeCloseTo(3000, 6);
  });

  it('solves a triangle by its three sides: 3, 4 and 5 stand square', () => {
    const found = fitted([bent(3000), bent(4000), bent(5000)], []);
    expect(found.loose).toEqual([]);
    expect(found.redundancy).toBe(0);
    expect(found.turns.map(({ value }) => Math.round(value * 1e4) / 1e4)).toEqual([90, 143.1301, 126.8699]);
    expect(found.turns.every(({ change }) => change === null)).toBe(true);
  });

  it('solves every angle of four walls by two diagonals, and of an inward corner on the side that was said', () => {
    // Corners (0,0) (5,0) (6,4) (1,3), then the same with the third pushed in to (3,1).
    const wide = [
      [0, 0],
      [5000, 0],
      [6000, 4000],
      [1000, 3000],
    ] as const;
    const pushed = [wide[0], wide[1], [3000, 1000] as const, wide[3]];
    for (const [corners, side] of [
      [wide, 1],
      [pushed, -1],
    ] as const) {
      const far = (i: number, k: number): number => {
        const [p, q] = [corners[i % 4] ?? wide[0], corners[k % 4] ?? wide[0]];
        return Math.hypot(p[0] - q[0], p[1] - q[1]);
      };
      const walls = [0, 1, 2, 3].map((i) => bent(far(i, i + 1), i === 1 ? side : 1));
      const found = fitted(walls, [
        { from: 0, to: 2, length: far(0, 2) },
        { from: 1, to: 3, length: far(1, 3) },
      ]);
      expect(found.redundancy).toBe(1);
      corners.forEach(([x, y], i) => {
        expect(found.corners[i]?.x).toBeCloseTo(x, 3);
        expect(found.corners[i]?.y).toBeCloseTo(y, 3);
      });
    }
  });

  it('says which corners can still swing', () => {
    const found = fitted([bent(4000), bent(3000), bent(4000), bent(3000)], []);
    expect(found.loose.length).toBeGreaterThan(0);
    expect(found.misfit).toBeNull();
  });

  it('makes a wall that could not be taped from the others', () => {
    const found = fitted([right(4000), right(3000), right(null), right(3000)], []);
    expect(found.walls[2]).toEqual({ value: expect.closeTo(4000, 3), change: null });
  });

  it('works nothing out for two walls', () => expect(fitSurvey([right(1), right(2)], [])).toBeNull());
});

describe('the measurement that fits badly', () => {
  it('is named, with what the others make it', () => {
    const found = fitted(
      [right(4020), right(3000), right(4200), right(3000)],
      [
        { from: 0, to: 2, length: Math.hypot(4020, 3000) },
        { from: 1, to: 3, length: Math.hypot(4020, 3000) },
      ],
    );
    expect(found.misfit).toMatchObject({ of: { what: 'wall', index: 2 }, typed: 4200, others: expect.closeTo(4020, 0), orElse: [] });
  });
  it('is a diagonal, where that was misread', () => {
    const found = fitted(box, [
      { from: 0, to: 2, length: 5000 },
      { from: 1, to: 3, length: 5300 },
    ]);
    expect(found.misfit).toMatchObject({ of: { what: 'diagonal', index: 1 }, typed: 5300, others: expect.closeTo(5000, 0) });
  });
  it('is a corner that is not square', () => {
    // A trapezium: the third corner pushed out by half a metre; both diagonals and all walls are right, two corners are not square.
    const slant = Math.hypot(3000, 500);
    const found = fitted(
      [right(4000), right(slant), right(4500), right(3000)],
      [
        { from: 0, to: 2, length: Math.hypot(4500, 3000) },
        { from: 1, to: 3, length: 5000 },
      ],
    );
    expect(found.misfit?.of.what).toBe('turn');
  });
  it('cannot be told from its like without a diagonal, and both are named', () => {
    const found = fitted([right(4020), right(3000), right(4200), right(3000)], []);
    expect(found.misfit?.of.what).toBe('wall');
    expect([found.misfit?.of.index, ...(found.misfit?.orElse ?? []).map(({ index }) => index)].sort()).toEqual([0, 2]);
  });
  it('is nobody where all is within what a tape is good for', () => {
    expect(fitted([right(4004), right(2997), right(4000), right(3003)], [{ from: 0, to: 2, length: 5003 }]).misfit).toBeNull();
  });
});
