import { describe, expect, it } from 'vitest';
import { adjustNetwork, type Observation } from '#model/geometry/network.ts';
import { traverse } from '#model/geometry/traverse.ts';
import { type Point, sub } from '#model/geometry/vec.ts';
import { fitSurvey } from '#model/measures/surveyFit.ts';

interface Side {
  readonly distance: number;
  /** degrees clockwise from north */
  readonly azimuth: number;
  readonly latitude: number;
  readonly departure: number;
  /** As adjusted; null: not printed. */
  readonly adjusted: readonly [latitude: number, departure: number] | null;
}
interface Example {
  readonly source: string;
  readonly misclosure: readonly [latitude: number, departure: number];
  /** Half of the last printed place and what rounded sides add up to. */
  readonly within: number;
  readonly sides: readonly Side[];
}

const degrees = (d: number, m = 0, s = 0): number => d + m / 60 + s / 3600;

const examples: readonly Example[] = [
  // "Sample Traverse Computations", a worked sheet of a surveying course (read at scribd.com/doc/279716815): six sides, latitudes
  // and departures, corrections by the compass rule and their adjusted values, four decimals. Its length unit stands for our mm.
  {
    source: 'six sides of a course sheet',
    misclosure: [16.8171, 18.0737],
    within: 1.5e-4,
    sides: [
      { distance: 495.85, azimuth: degrees(5, 30), latitude: 493.5672, departure: 47.5251, adjusted: [491.8995, 45.7328] },
      { distance: 850.62, azimuth: degrees(46, 2), latitude: 590.5342, departure: 612.2285, adjusted: [587.6733, 609.1538] },
      { distance: 855.45, azimuth: 180 - degrees(67, 38), latitude: -325.5265, departure: 791.0924, adjusted: [-328.4036, 788.0003] },
      { distance: 1020.87, azimuth: 180 - degrees(12, 25), latitude: -996.9916, departure: 219.5069, adjusted: [-1000.4252, 215.8168] },
      { distance: 1117.26, azimuth: 180 + degrees(83, 44), latitude: -121.9557, departure: -1110.584, adjusted: [-125.7134, -1114.6225] },
      { distance: 660.08, azimuth: 360 - degrees(55, 9), latitude: 377.1895, departure: -541.6952, adjusted: [374.9694, -544.0812] },
    ],
  },
  // J. Mahun, Open Access Surveying Library, Traverse Computations, chapter I, "Loop Traverse" (read at
  // jerrymahun.com/index.php/home/open-access/17-trav-comps/49-travcomps-chap-i): bearings, lengths (ft), latitudes, departures
  // and both closure errors. The adjusted values stand in pictures that were not at hand.
  {
    source: 'a loop traverse of an open textbook',
    misclosure: [0.083, 0.075],
    within: 1.2e-3,
    sides: [
      { distance: 472.68, azimuth: 180 + degrees(68, 5, 35), latitude: -176.357, departure: -438.548, adjusted: null },
      { distance: 216.13, azimuth: 360 - degrees(19, 46, 0), latitude: 203.395, departure: -73.093, adjusted: null },
      { distance: 276.52, azimuth: degrees(45, 55, 20), latitude: 192.357, departure: 198.651, adjusted: null },
      { distance: 382.24, azimuth: 180 - degrees(54, 59, 15), latitude: -219.312, departure: 313.065, adjusted: null },
    ],
  },
  // "Class code", a worked sheet of another course (read at scribd.com/document/481557956): the five sides with their latitudes
  // and departures, two decimals; it balances them by another rule, so the adjusted values are not used.
  {
    source: 'five sides of a course sheet',
    misclosure: [0.07, 0.02],
    within: 1e-2,
    sides: [
      { distance: 647.25, azimuth: degrees(126, 55, 17), latitude: -388.82, departure: 517.45, adjusted: null },
      { distance: 203.03, azimuth: degrees(178, 18, 58), latitude: -202.94, departure: 5.97, adjusted: null },
      { distance: 720.35, azimuth: degrees(15, 31, 54), latitude: 694.05, departure: 192.89, adjusted: null },
      { distance: 610.24, azimuth: degrees(284, 35, 20), latitude: 153.7, departure: -590.57, adjusted: null },
      { distance: 285.13, azimuth: degrees(206, 9, 42), latitude: -255.92, departure: -125.72, adjusted: null },
    ],
  },
];

/** A vector of ours as latitude (north) and departure (east); our first side runs along +x. */
function geographic({ x, y }: Point, first: number): [latitude: number, departure: number] {
  const azimuth = (first * Math.PI) / 180;
  return [x * Math.cos(azimuth) - y * Math.sin(azimuth), x * Math.sin(azimuth) + y * Math.cos(azimuth)];
}
const near = (found: readonly number[], printed: readonly number[], within: number): void =>
  found.forEach((value, i) => {
    expect(Math.abs(value - (printed[i] ?? Number.NaN))).toBeLessThan(within);
  });

describe.each(examples)('the compass rule, against $source', ({ sides, misclosure, within }) => {
  const first = sides[0]?.azimuth ?? 0;
  const turns = sides.map(({ azimuth }, i) => {
    const turn = ((sides[(i + 1) % sides.length]?.azimuth ?? 0) - azimuth + 720) % 360;
    return turn > 180 ? turn - 360 : turn;
  });
  const found = traverse(sides.map(({ distance }, i) => ({ length: distance, turn: turns[i] ?? 0 })));

  it('has the printed misclosure', () => {
    expect(found.turnError).toBeCloseTo(0, 9);
    near(geographic(found.misclosure, first), misclosure, within * 2);
  });
  it('has the printed latitudes and departures', () => {
    sides.forEach(({ latitude, departure }, i) => {
      near(geographic(sub(found.measured[i + 1] as Point, found.measured[i] as Point), first), [latitude, departure], within);
    });
  });
  it('has the printed adjusted ones, and they close', () => {
    let total = [0, 0];
    sides.forEach(({ adjusted, distance, latitude, departure }, i) => {
      const [a, b] = [found.adjusted[i] as Point, found.adjusted[(i + 1) % sides.length] as Point];
      const ours = geographic(sub(b, a), first);
      total = [total[0] ?? 0, total[1] ?? 0].map((sum, k) => sum + (ours[k] ?? 0));
      // Where no adjusted value is printed: the printed side less its share of the printed misclosure, the rule as it is stated there.
      const share = distance / sides.reduce((sum, side) => sum + side.distance, 0);
      near(ours, adjusted ?? [latitude - misclosure[0] * share, departure - misclosure[1] * share], within * 2);
    });
    near(total, [0, 0], 1e-6);
  });
});

describe('the transit rule, on square corners', () => {
  // The rule as surveying textbooks state it (from memory): the correction in latitude of a side is the misclosure in latitude times
  // its latitude over the sum of latitudes without their signs; departures likewise. Figures worked by hand from that.
  const found = traverse([6000, 3000, 2000, 2000, 4030, 5010].map((length, i) => ({ length, turn: i === 2 ? -90 : 90 })));
  it('corrects each side along itself', () => {
    const sides = found.squared?.map((corner, i) => sub(found.squared?.[(i + 1) % 6] as Point, corner)) ?? [];
    expect(sides).toHaveLength(6);
    const east = [6000 + (30 * 6000) / 12030, 0, -2000 + (30 * 2000) / 12030, 0, -4030 + (30 * 4030) / 12030, 0];
    const south = [0, 3000 + (10 * 3000) / 10010, 0, 2000 + (10 * 2000) / 10010, 0, -5010 + (10 * 5010) / 10010];
    for (const [i, side] of sides.entries()) {
      expect(side.x).toBeCloseTo(east[i] ?? Number.NaN, 6);
      expect(side.y).toBeCloseTo(south[i] ?? Number.NaN, 6);
    }
  });
  it('is left where a corner is not square', () =>
    expect(traverse([3000, 4000, 5000].map((length) => ({ length, turn: 120 }))).squared).toBeNull());
});

/**
 * Least squares once more and by other means: Gauss-Newton from numerical derivatives, normal equations by Gaussian elimination,
 * no damping, no matrix library.
 */
function solvedOtherwise(
  start: readonly Point[],
  free: readonly (readonly [point: number, axis: 'x' | 'y'])[],
  seen: readonly Observation[],
) {
  const points = start.map((p) => ({ ...p }));
  const made = (o: Observation): number => {
    const heading = (a: number, b: number): number =>
      Math.atan2((points[b]?.y ?? 0) - (points[a]?.y ?? 0), (points[b]?.x ?? 0) - (points[a]?.x ?? 0));
    if (o.kind === 'distance')
      return Math.hypot((points[o.to]?.x ?? 0) - (points[o.from]?.x ?? 0), (points[o.to]?.y ?? 0) - (points[o.from]?.y ?? 0));
    return ((heading(o.at, o.to) - heading(o.from, o.at)) * 180) / Math.PI;
  };
  const missed = (o: Observation): number => {
    const by = o.value - made(o);
    return (o.kind === 'turn' ? by - 360 * Math.round(by / 360) : by) / o.sigma;
  };
  for (let round = 0; round < 30; round++) {
    const rows = seen.map((o) =>
      free.map(([i, axis]) => {
        const p = points[i] as { x: number; y: number };
        const was = p[axis];
        p[axis] = was + 1e-3;
        const more = missed(o);
        p[axis] = was - 1e-3;
        const less = missed(o);
        p[axis] = was;
        return (less - more) / 2e-3;
      }),
    );
    const table = free.map((_, r) => [
      ...free.map((__, c) => rows.reduce((sum, row) => sum + (row[r] ?? 0) * (row[c] ?? 0), 0)),
      seen.reduce((sum, o, k) => sum + (rows[k]?.[r] ?? 0) * missed(o), 0),
    ]);
    eliminate(table).forEach((by, k) => {
      const [i, axis] = free[k] as [number, 'x' | 'y'];
      (points[i] as { x: number; y: number })[axis] += by;
    });
  }
  return points;
}

function eliminate(table: number[][]): number[] {
  table.forEach((_, k) => {
    const pivot = table.slice(k).reduce((best, row, i) => (Math.abs(row[k] ?? 0) > Math.abs(table[best]?.[k] ?? 0) ? i + k : best), k);
    [table[k], table[pivot]] = [table[pivot] as number[], table[k] as number[]];
    const top = table[k] as number[];
    table.forEach((row, i) => {
      if (i === k) return;
      const times = (row[k] ?? 0) / (top[k] ?? 1);
      top.forEach((value, c) => {
        row[c] = (row[c] ?? 0) - times * value;
      });
    });
  });
  return table.map((row, k) => (row.at(-1) ?? 0) / (row[k] ?? 1));
}

describe('least squares', () => {
  // C. D. Ghilani, Adjustment Computations, example 14.2 (figures read in the theory course resources at geolabsolutions.com):
  // one station from three distances to known ones, ft. The printed result was not at hand: the other solver stands for it.
  it('finds the station of a trilateration', () => {
    const known = [
      { x: 865.4, y: 4527.15 },
      { x: 2432.55, y: 2047.25 },
      { x: 2865.22, y: 27.15 },
    ];
    const start = [...known, { x: 6500, y: 2000 }];
    const seen = [6049, 4736.83, 5446.49].map((value, from): Observation => ({ kind: 'distance', from, to: 3, value, sigma: 1 }));
    const held = start.map((_, i) => ({ x: i < 3, y: i < 3 }));
    const found = adjustNetwork(start, held, seen);
    const other = solvedOtherwise(
      start,
      [
        [3, 'x'],
        [3, 'y'],
      ] as const,
      seen,
    );
    expect(found.points[3]?.x).toBeCloseTo(other[3]?.x ?? 0, 5);
    expect(found.points[3]?.y).toBeCloseTo(other[3]?.y ?? 0, 5);
    expect(found.redundancy).toBe(1);
    // A least squares solution leaves residuals that no small move makes smaller: they are square to both derivatives.
    const at = found.points[3] as Point;
    for (const axis of ['x', 'y'] as const) {
      const slope = found.residuals.reduce(
        (sum, { change, fitted }, i) => sum + (change * (at[axis] - (known[i]?.[axis] ?? 0))) / fitted,
        0,
      );
      expect(Math.abs(slope)).toBeLessThan(1e-6);
    }
    // Redundancies add up to the measurements too many (W. Baarda, 1968; from memory).
    expect(found.residuals.reduce((sum, { redundancy }) => sum + redundancy, 0)).toBeCloseTo(1, 9);
  });

  it.each([1, 2, 3, 4, 5, 6])('agrees with another solver in a room of random walls and diagonals, seed %i', (seed) => {
    let state = seed * 7919;
    const random = (): number => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state / 2147483648;
    };
    const count = 4 + (seed % 4);
    const true_ = Array.from({ length: count }, (_, i) => {
      const angle = (i / count) * 2 * Math.PI;
      const far = 2500 + 1500 * random();
      return { x: far * Math.cos(angle), y: far * Math.sin(angle) };
    });
    const far = (i: number, k: number): number => {
      const [p, q] = [true_[i % count] as Point, true_[k % count] as Point];
      return Math.hypot(p.x - q.x, p.y - q.y);
    };
    const heading = (i: number): number => {
      const [p, q] = [true_[i % count] as Point, true_[(i + 1) % count] as Point];
      return (Math.atan2(q.y - p.y, q.x - p.x) * 180) / Math.PI;
    };
    const error = (): number => (random() - 0.5) * 12;
    const walls = true_.map((_, i) => {
      const turn = (((heading(i + 1) - heading(i)) % 360) + 360) % 360;
      return { length: far(i, i + 1) + error(), turn: (turn > 180 ? turn - 360 : turn) + error() / 20, isTurnFree: false };
    });
    const diagonals = [
      { from: 0, to: 2, length: far(0, 2) + error() },
      { from: 1, to: 3, length: far(1, 3) + error() },
    ];
    const found = fitSurvey(walls, diagonals);
    // The same weights, written out: 3 mm and half a mm a metre; half a degree.
    const seen: Observation[] = [
      ...walls.map(({ length }, i): Observation => {
        return { kind: 'distance', from: i, to: (i + 1) % count, value: length, sigma: 3 + length / 2000 };
      }),
      ...walls.map(({ turn }, i): Observation => {
        return { kind: 'turn', from: i, at: (i + 1) % count, to: (i + 2) % count, value: turn, sigma: 0.5 };
      }),
      ...diagonals.map(({ from, to, length }): Observation => ({ kind: 'distance', from, to, value: length, sigma: 3 + length / 2000 })),
    ];
    const begin = traverse(walls).adjusted;
    const free = begin.flatMap((_, i) =>
      (['x', 'y'] as const).filter((axis) => i > 1 || (i === 1 && axis === 'x')).map((axis) => [i, axis] as const),
    );
    // The other solver wants the first wall along +x to begin with.
    const other = solvedOtherwise(
      begin.map((p, i) => (i === 1 ? { x: p.x, y: 0 } : p)),
      free,
      seen,
    );
    other.forEach((p, i) => {
      expect(found?.corners[i]?.x).toBeCloseTo(p.x, 3);
      expect(found?.corners[i]?.y).toBeCloseTo(p.y, 3);
    });
    expect(found?.redundancy).toBe(seen.length - free.length);
  });
});
