import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { haveRoom, type Size } from '#model/analysis/moveDay/crateRoom.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { runs } from '#tests/support/runs.ts';

// What stands outside: HiGHS, a mixed-integer solver, asked for the same rectangles square by square.

const highs = await loadHighs();

/** Whether rectangles of whole numbers lie in layers of whole numbers: every place of each, one is taken, no square twice. */
function onSquares(sizes: readonly Size[], [w, d]: Size, layers: number): boolean {
  const covering = new Map<string, string[]>();
  const rows: string[] = [];
  const names: string[] = [];
  sizes.forEach(([a, b], k) => {
    const own: string[] = [];
    const ways =
      a === b
        ? [[a, b]]
        : [
            [a, b],
            [b, a],
          ];
    for (const [p = 0, q = 0] of ways)
      for (let layer = 0; layer < layers; layer++)
        for (let x = 0; x + p <= w; x++)
          for (let y = 0; y + q <= d; y++) {
            const name = `x${names.length}`;
            names.push(name);
            own.push(name);
            for (let i = x; i < x + p; i++)
              for (let j = y; j < y + q; j++) {
                const square = `${layer},${i},${j}`;
                covering.set(square, [...(covering.get(square) ?? []), name]);
              }
          }
    if (own.length > 0) rows.push(` one${k}: ${own.join(' + ')} = 1`);
    else rows.push(` one${k}: 0 none >= 1`);
  });
  if (rows.some((row) => row.includes('none'))) return false;
  const squares = [...covering.values()].map((list, k) => ` s${k}: ${list.join(' + ')} <= 1`);
  const text = `Minimize\n obj: 0 ${names[0]}\nSubject To\n${[...rows, ...squares].join('\n')}\nBinary\n ${names.join(' ')}\nEnd`;
  return highs.solve(text, { output_flag: false }).Status === 'Optimal';
}

describe('trays in a crate', () => {
  it('of 0.60 by 0.40 m in two layers lie four frames of 0.32 by 0.30, and not five, though five have less area than it', () => {
    const frames = (count: number): Size[] => Array.from({ length: count }, () => [320, 300]);
    expect(haveRoom(frames(4), [600, 400], 2)).toBe(true);
    expect(5 * 320 * 300).toBeLessThanOrEqual(600 * 400 * 2);
    expect(haveRoom(frames(5), [600, 400], 2)).toBe(false);
  });

  it('fill it to the mm, turned where they must be', () => {
    const layer: Size = [600, 400];
    const filling = (last: number): Size[] => [
      [200, 600],
      [400, 200],
      [200, last],
    ];
    expect(haveRoom(filling(200), layer, 1)).toBe(true);
    expect(haveRoom(filling(201), layer, 1)).toBe(false);
    expect(haveRoom([], layer, 2)).toBe(true);
    expect(haveRoom([[700, 100]], layer, 2)).toBe(false);
  });

  it('as a solver says square by square', () => {
    const random = seededRandom(3);
    const said = { yes: 0, no: 0 };
    for (let run = 0; run < runs(25, 250); run++) {
      const sizes = Array.from(
        { length: 2 + Math.floor(4 * random()) },
        (): Size => [1 + Math.floor(4 * random()), 1 + Math.floor(3 * random())],
      );
      const layers = 1 + Math.floor(2 * random());
      const expected = onSquares(sizes, [6, 4], layers);
      said[expected ? 'yes' : 'no']++;
      expect(haveRoom(sizes, [6, 4], layers), JSON.stringify({ sizes, layers })).toBe(expected);
    }
    expect(Math.min(said.yes, said.no)).toBeGreaterThan(2);
  });
});
