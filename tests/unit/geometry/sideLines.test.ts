import { describe, expect, it } from 'vitest';
import type { Polygon } from '#model/geometry/polygon.ts';
import { SideLines } from '#model/geometry/sideLines.ts';

const square = (x: number, y: number, size: number): Polygon => [
  { x, y },
  { x: x + size, y },
  { x: x + size, y: y + size },
  { x, y: y + size },
];

describe('lines that sides lie on', () => {
  const lines = new SideLines([square(0, 0, 1000), square(500, 300, 1000)]);

  it('hold what the two squares share, and what is in either', () => {
    const shared: Polygon = [
      { x: 500, y: 300 },
      { x: 1000, y: 300 },
      { x: 1000, y: 1000 },
      { x: 500, y: 1000 },
    ];
    const either: Polygon = [
      { x: 0, y: 0 },
      { x: 1000, y: 0 },
      { x: 1000, y: 300 },
      { x: 1500, y: 300 },
      { x: 1500, y: 1300 },
      { x: 500, y: 1300 },
      { x: 500, y: 1000 },
      { x: 0, y: 1000 },
    ];
    expect([lines.hold([shared]), lines.hold([either]), lines.hold([])]).toEqual([true, true, true]);
  });

  it('do not hold what has lost a corner, however small beside the rest', () => {
    const cut: Polygon = [
      { x: 500, y: 300 },
      { x: 1000, y: 300 },
      { x: 1000, y: 995 },
      { x: 996, y: 1000 },
      { x: 500, y: 1000 },
    ];
    expect(lines.hold([cut])).toBe(false);
  });

  it('forgive what rounding to 0.001 mm moves and the shortest sides', () => {
    const rounded: Polygon = [
      { x: 500.001, y: 299.999 },
      { x: 1000, y: 300.001 },
      { x: 1000.001, y: 999.99 },
      { x: 999.99, y: 1000 },
      { x: 500, y: 1000.001 },
    ];
    expect(lines.hold([rounded])).toBe(true);
  });
});
