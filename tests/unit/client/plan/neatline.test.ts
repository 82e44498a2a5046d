import { describe, expect, it } from 'vitest';
import { barsAcross, barsDown, cellAt, cellsOf, columnLetters } from '#client/plan/neatline.ts';

const bounds = { minX: 0, minY: 0, maxX: 8400, maxY: 7600 };

describe('neatline', () => {
  it('letters across, numbers down', () => {
    expect(cellAt({ x: 1500, y: 5600 }, bounds)).toBe('B6');
    expect(cellAt({ x: 0, y: 0 }, bounds)).toBe('A1');
  });

  it('goes on after Z', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
  });

  it('starts at the room, wherever it lies', () => {
    expect(cellAt({ x: -1900, y: 10_050 }, { minX: -2000, minY: 10_000, maxX: 1000, maxY: 12_000 })).toBe('A1');
  });

  it('names the nearest square for a point outside', () => {
    expect(cellAt({ x: -300, y: 9000 }, bounds)).toBe('A8');
    expect(cellAt({ x: 8400, y: 7600 }, bounds)).toBe('I8');
  });

  it('ends with a short bar, and has no bar of no length', () => {
    expect(barsAcross(bounds).map((b) => b.label)).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I']);
    expect(barsAcross(bounds).at(-1)).toMatchObject({ from: 8000, to: 8400, isTinted: true });
    expect(barsDown({ ...bounds, maxY: 3000 }).map((b) => b.to)).toEqual([1000, 2000, 3000]);
  });

  it('names no square that is not lettered: a sliver belongs to the last one', () => {
    // A room of 8.01 by 7.50 m, as taped.
    const taped = { minX: 0, minY: 0, maxX: 8010, maxY: 7500 };
    expect(
      barsAcross(taped)
        .map(({ label, to }) => [label, to])
        .at(-1),
    ).toEqual(['H', 8010]);
    expect(barsDown(taped).at(-1)).toMatchObject({ label: '8', from: 7000, to: 7500 });
    expect(cellAt({ x: 8010, y: 100 }, taped)).toBe('H1');
    expect(
      cellsOf(
        [
          { x: 0, y: 0 },
          { x: 8010, y: 400 },
        ],
        taped,
      ),
    ).toBe('A1 to H1');
    for (let long = 100; long <= 3000; long += 10) {
      const bounds = { minX: 0, minY: 0, maxX: long, maxY: long };
      const bars = barsAcross(bounds);
      expect(bars.at(-1)?.to).toBe(long);
      expect(cellAt({ x: long, y: 0 }, bounds)).toBe(`${bars.at(-1)?.label}1`);
      if (bars.length > 1) expect(bars.every(({ from, to }) => to - from >= 250)).toBe(true);
    }
  });

  it('says the span of a thing', () => {
    const box = [
      { x: 1000, y: 4100 },
      { x: 1400, y: 6900 },
    ];
    expect(cellsOf(box, bounds)).toBe('B5 to B7');
    expect(
      cellsOf(
        [
          { x: 0, y: 0 },
          { x: 1000, y: 1000 },
        ],
        bounds,
      ),
    ).toBe('A1');
  });
});
