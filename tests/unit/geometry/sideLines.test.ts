import { describe, expect, it } from 'vitest';
import type { Polygon } from '#model/geometry/polygon.ts';
import { SideLines } from '#model/geometry/sideLines.ts';

const ring = (...corners: readonly (readonly [number, number])[]): Polygon => corners.map(([x, y]) => ({ x, y }));

describe('lines that sides lie on', () => {
  const lines = new SideLines([ring([0, 0], [1000, 0], [1000, 1000], [0, 1000]), ring([500, 300], [1500, 300], [1500, 1300], [500, 1300])]);

  it('hold what the two squares share, and what is in either', () => {
    const shared = ring([500, 300], [1000, 300], [1000, 1000], [500, 1000]);
    const either = ring([0, 0], [1000, 0], [1000, 300], [1500, 300], [1500, 1300], [500, 1300], [500, 1000], [0, 1000]);
    expect([lines.hold([shared]), lines.hold([either]), lines.hold([])]).toEqual([true, true, true]);
  });

  it('do not hold what has lost a corner, however small beside the rest', () => {
    const cut = ring([500, 300], [1000, 300], [1000, 995], [996, 1000], [500, 1000]);
    expect(lines.hold([cut])).toBe(false);
  });

  it('forgive what rounding to 0.001 mm moves and the shortest sides', () => {
    const rounded = ring([500.001, 299.999], [1000, 300.001], [1000.001, 999.99], [999.99, 1000], [500, 1000.001]);
    expect(lines.hold([rounded])).toBe(true);
  });
});
