import { describe, expect, it } from 'vitest';
import { adjustNetwork, type Observation } from '#model/geometry/network.ts';

const held = [
  { x: true, y: true },
  { x: false, y: true },
  { x: false, y: false },
];
const sides = (a: number, b: number, c: number): Observation[] => [
  { kind: 'distance', from: 0, to: 1, value: a, sigma: 3 },
  { kind: 'distance', from: 1, to: 2, value: b, sigma: 3 },
  { kind: 'distance', from: 2, to: 0, value: c, sigma: 3 },
];

describe('points from distances', () => {
  it('a triangle by three sides: 3, 4 and 5 m stand square', () => {
    const start = [
      { x: 0, y: 0 },
      { x: 2900, y: 0 },
      { x: 2950, y: 4100 },
    ];
    const { points, redundancy } = adjustNetwork(start, held, sides(3000, 4000, 5000));
    expect(points[1]?.x).toBeCloseTo(3000, 4);
    expect(points[2]?.x).toBeCloseTo(3000, 4);
    expect(points[2]?.y).toBeCloseTo(4000, 4);
    expect(redundancy).toBe(0);
  });

  it.each([0, 5e-324, 1e-200])('points that lie on each other give no direction, and nothing breaks (%d mm apart)', (apart) => {
    const start = [
      { x: 0, y: 0 },
      { x: apart, y: 0 },
      { x: apart, y: apart },
    ];
    const turn: Observation = { kind: 'turn', from: 0, at: 1, to: 2, value: 90, sigma: 0.5 };
    const { points } = adjustNetwork(start, held, [...sides(apart, apart, 1), turn]);
    expect(points.flatMap(({ x, y }) => [x, y]).every(Number.isFinite)).toBe(true);
  });
});
