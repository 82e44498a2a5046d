import { describe, expect, it } from 'vitest';
import { matWindows } from '#model/measures/matWindows.ts';

const grid = (wide: number, deep: number) =>
  Array.from({ length: wide * deep }, (_, k) => ({ x: (k % wide) * 300, y: Math.floor(k / wide) * 300 }));

describe('parts of a floor', () => {
  it('are told small ones first, each once, and the whole is none of them', () => {
    const points = grid(30, 20);
    const windows = matWindows(points);
    expect(windows.length).toBeGreaterThan(20);
    expect(new Set(windows.map((window) => [...window].join())).size).toBe(windows.length);
    for (const window of windows) expect(window.size).toBeLessThan(points.length);
    expect((windows[0] as ReadonlySet<number>).size).toBeLessThan((windows.at(-1) as ReadonlySet<number>).size);
    // Every point lies in some of the smallest.
    expect(points.every((_, k) => windows.some((window) => window.has(k) && window.size < points.length / 10))).toBe(true);
  });

  it('are rectangles: what lies between two of its points lies in it', () => {
    const points = grid(20, 20);
    for (const window of matWindows(points)) {
      const inside = [...window].map((k) => points[k] as { x: number; y: number });
      const xs = inside.map(({ x }) => x);
      const ys = inside.map(({ y }) => y);
      const between = points.filter(
        ({ x, y }) => x >= Math.min(...xs) && x <= Math.max(...xs) && y >= Math.min(...ys) && y <= Math.max(...ys),
      );
      expect(between).toHaveLength(window.size);
    }
  });

  it('of a floor no larger than one of them there are none', () => {
    expect(matWindows(grid(3, 3))).toEqual([]);
    expect(matWindows([])).toEqual([]);
  });
});
