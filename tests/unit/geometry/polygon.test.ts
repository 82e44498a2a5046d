import { describe, expect, it } from 'vitest';
import { convexParts } from '#model/geometry/convexParts.ts';
import { area, isSimple, type Polygon, segmentsMeet } from '#model/geometry/polygon.ts';
import { turn } from '#model/geometry/vec.ts';

const at = (...points: [number, number][]): Polygon => points.map(([x, y]) => ({ x, y }));
/** Both its ends lie on one line: 1390 by 990 less a hollow of 658.1 by 510.6. */
const trough = at([-695, -495], [695, -495], [695, 495], [329.05, 495], [329.05, -15.6], [-329.05, -15.6], [-329.05, 495], [-695, 495]);

describe('a ring with two sides on one line', () => {
  it('crosses itself at no turn, and its parts make it up', () => {
    for (let degrees = 0; degrees < 360; degrees += 0.7) {
      const turned = trough.map((p) => turn({ x: p.x + 1234.5, y: p.y - 777.7 }, degrees));
      expect(isSimple(turned), `${degrees}`).toBe(true);
      // 1390 x 990 - 658.1 x 510.6 = 1376100 - 336025.86
      expect(
        convexParts(turned).reduce((sum, part) => sum + area(part), 0),
        `${degrees}`,
      ).toBeCloseTo(1_040_074.14, 3);
    }
  });
});

describe('segments', () => {
  it.each([
    ['cross', [0, 0], [4, 4], [0, 4], [4, 0], true],
    ['touch with an end', [0, 0], [4, 0], [2, 0], [2, 3], true],
    ['share an end', [0, 0], [4, 0], [4, 0], [5, 3], true],
    ['lap on one line', [0, 0], [4, 0], [3, 0], [6, 0], true],
    ['lie apart on one line', [0, 0], [4, 0], [5, 0], [6, 0], false],
    ['lie beside each other', [0, 0], [4, 0], [0, 1], [4, 1], false],
    ['would meet if they were longer', [0, 0], [4, 4], [3, 0], [5, -9], false],
  ] as const)('that %s', (_, a, b, c, d, meets) => {
    const [p, q, r, s] = at([...a], [...b], [...c], [...d]);
    if (!p || !q || !r || !s) throw new Error('four points');
    expect(segmentsMeet({ a: p, b: q }, { a: r, b: s })).toBe(meets);
    expect(segmentsMeet({ a: s, b: r }, { a: p, b: q })).toBe(meets);
  });
});
