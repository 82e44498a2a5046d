import { describe, expect, it } from 'vitest';
import { analyse } from '#model/analysis/report.ts';
import { seededRandom } from '#model/geometry/seededRandom.ts';
import { measuresOf } from '#model/measures/measures.ts';
import { reportNarrow, reportWays } from '#model/measures/reportWays.ts';
import { wayBetween } from '#model/measures/wayBetween.ts';
import { waysKeeper } from '#model/measures/waysKeep.ts';
import { door } from '#model/rules/way/door.ts';
import { narrow } from '#model/rules/way/narrow.ts';
import { width } from '#model/rules/way/width.ts';
import { buildScene } from '#model/scene/build.ts';
import type { Classroom } from '#model/schema/types.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { runs } from '#tests/support/runs.ts';

/** Whatever the file holds, the ways give an answer: widths of 0 or more, shares within 0 and 1, no failure. */
function expectAnswer(name: string, classroom: Classroom): void {
  const scene = buildScene(classroom);
  const measures = measuresOf(scene);
  for (const way of reportWays(measures.ways().exact())) {
    expect(way.width, name).toBeGreaterThanOrEqual(0);
    expect(way.judged, name).toBeGreaterThanOrEqual(way.width - 0.02);
    expect(way.share, name).toBeGreaterThanOrEqual(0);
    expect(way.share, name).toBeLessThanOrEqual(1);
    expect(Number.isFinite(way.width), name).toBe(true);
    if (way.width === 0) expect(way).not.toHaveProperty('at');
  }
  for (const place of reportNarrow(measures.ways())) {
    expect(place.width, name).toBeGreaterThan(0);
    expect(place.length, name).toBeGreaterThanOrEqual(0);
    expect(Number.isFinite(place.length), name).toBe(true);
  }
  const report = analyse(classroom, { rules: [width, narrow, door] });
  expect(Object.keys(report.answers).sort()).toEqual(['way/door', 'way/narrow', 'way/width']);
  const [first, second] = scene.bodies;
  if (first && second) wayBetween(scene, first.id, second.id, { body: 300 });
  if (first) wayBetween(scene, { x: 10, y: 10 }, first.id);
  const mat = [
    { x: 1000, y: 1000 },
    { x: 2200, y: 1000 },
    { x: 2200, y: 1750 },
    { x: 1000, y: 1750 },
  ];
  expect(typeof waysKeeper(scene).keeps([mat])).toBe('boolean');
}

const shelf = (id: string, x: number, y: number, change = {}) => ({ id, kind: 'shelf', x, y, width: 1200, depth: 320, ...change }) as const;
const corners = (...points: [number, number][]) => points.map(([x, y], i) => ({ id: `c${i + 1}`, x, y }));

describe('ways of rooms nobody would draw', () => {
  it.each([
    ['pieces in the same place', plainRoom({ pieces: [shelf('s1', 3000, 2000), shelf('s2', 3000, 2000), shelf('s3', 3000, 2000)] })],
    ['a piece within a piece', plainRoom({ pieces: [shelf('s1', 3000, 2000, { width: 3000, depth: 3000 }), shelf('s2', 3000, 2000)] })],
    ['a piece as large as the room', plainRoom({ pieces: [shelf('s1', 3000, 2500, { width: 6000, depth: 5000 })] })],
    ['a piece that holds the room', plainRoom({ pieces: [shelf('s1', 3000, 2500, { width: 90_000, depth: 90_000 })] })],
    ['a piece far outside', plainRoom({ pieces: [shelf('s1', 900_000, -900_000), shelf('s2', 3000, 200)] })],
    ['specks', plainRoom({ pieces: [shelf('s1', 3000, 2000, { width: 1e-9, depth: 1e-9 }), shelf('s2', 3000, 200, { depth: 1e-6 })] })],
    [
      'an outline without area',
      plainRoom({
        pieces: [
          shelf('s1', 3000, 2000, {
            outline: [
              [0, 0],
              [100, 0],
              [200, 0],
            ],
          }),
        ],
      }),
    ],
    [
      'an outline that is one point',
      plainRoom({
        pieces: [
          shelf('s1', 3000, 2000, {
            outline: [
              [0, 0],
              [0, 0],
              [0, 0],
            ],
          }),
        ],
      }),
    ],
    [
      'an outline that crosses itself',
      plainRoom({
        pieces: [
          shelf('s1', 3000, 2000, {
            outline: [
              [-500, -500],
              [500, 500],
              [500, -500],
              [-500, 500],
            ],
          }),
        ],
      }),
    ],
    [
      'a star whose corners all turn one way',
      plainRoom({
        pieces: [
          shelf('s1', 3000, 2000, {
            outline: [
              [0, -500],
              [294, 405],
              [-476, -155],
              [476, -155],
              [-294, 405],
            ],
          }),
        ],
      }),
    ],
    ['walls without area', plainRoom({ room: { corners: corners([0, 0], [6000, 0], [3000, 0]) }, pieces: [shelf('s1', 3000, 200)] })],
    ['walls that touch themselves', plainRoom({ room: { corners: corners([0, 0], [6000, 0], [6000, 5000], [3000, 0], [0, 5000]) } })],
    ['corners in one place', plainRoom({ room: { corners: corners([0, 0], [0, 0], [6000, 0], [6000, 5000], [0, 5000]) } })],
    [
      'walls drawn the other way round',
      plainRoom({ room: { corners: corners([0, 0], [0, 5000], [6000, 5000], [6000, 0]) }, pieces: [shelf('s1', 3000, 4000)] }),
    ],
    [
      'a door longer than its wall',
      plainRoom({
        room: { openings: [{ id: 'd1', kind: 'door', from: 'c2', offset: 4000, width: 4000 }] },
        pieces: [shelf('s1', 3000, 4000)],
      }),
    ],
    [
      'a door beyond its wall',
      plainRoom({
        room: { openings: [{ id: 'd1', kind: 'door', from: 'c2', offset: 9000, width: 900 }] },
        pieces: [shelf('s1', 3000, 4000)],
      }),
    ],
    [
      'a door in no wall',
      plainRoom({
        room: { openings: [{ id: 'd1', kind: 'door', from: 'none', offset: 0, width: 900 }] },
        pieces: [shelf('s1', 3000, 4000)],
      }),
    ],
    [
      'a door whose alcove would lie in the room',
      plainRoom({
        room: {
          corners: corners([0, 0], [6000, 0], [6000, 2000], [2000, 2000], [2000, 2200], [6000, 2200], [6000, 5000], [0, 5000]),
          openings: [{ id: 'd1', kind: 'door', from: 'c3', offset: 1000, width: 900 }],
        },
        pieces: [shelf('s1', 4000, 4000), shelf('s2', 4000, 400)],
      }),
    ],
    [
      'two doors in one place',
      plainRoom({
        room: {
          openings: [
            { id: 'd1', kind: 'door', from: 'c1', offset: 400, width: 900 },
            { id: 'd2', kind: 'door', from: 'c1', offset: 400, width: 900 },
          ],
        },
        pieces: [shelf('s1', 3000, 4000)],
      }),
    ],
    ['a piece across the door', plainRoom({ pieces: [shelf('s1', 850, 0), shelf('s2', 3000, 4000)] })],
    [
      'figures of the class at their ends',
      plainRoom({ access: { routeWidth: 100_000, leastWidth: 0.001 }, pieces: [shelf('s1', 3000, 4000)] }),
    ],
    ['a route of almost nothing', plainRoom({ access: { routeWidth: 0.001 }, pieces: [shelf('s1', 3000, 4000), shelf('s2', 3000, 4100)] })],
  ])('%s', expectAnswer);

  it.each(Array.from({ length: runs(16, 200) }, (_, i) => 8001 + i))('a jumble (seed %i)', (seed) => {
    const random = seededRandom(seed);
    const at = (low: number, high: number): number => low + (high - low) * random();
    const snap = (value: number): number => (random() < 0.6 ? Math.round(value / 500) * 500 : value);
    const pieces = Array.from({ length: 14 }, (_, i) => ({
      ...shelf(`s${i}`, snap(at(-500, 6500)), snap(at(-500, 5500))),
      kind: (['shelf', 'table', 'other'] as const)[i % 3] ?? 'other',
      rotation: snap(at(0, 360)) % 360,
      width: snap(at(1, 2500)) || 500,
      depth: snap(at(1, 1500)) || 500,
      seatSides: random() < 0.5 ? { front: 1, left: 2 } : {},
      round: random() < 0.2,
    }));
    const ring = corners(...Array.from({ length: 5 }, (): [number, number] => [snap(at(0, 6000)), snap(at(0, 5000))]));
    const openings = Array.from({ length: 3 }, (_, i) => ({
      id: `d${i}`,
      kind: 'door' as const,
      from: `c${1 + Math.floor(random() * 4)}`,
      offset: snap(at(0, 4000)),
      width: snap(at(100, 2000)) || 500,
    }));
    expectAnswer(`seed ${seed}`, plainRoom({ room: { openings, ...(random() < 0.5 && { corners: ring }) }, pieces }));
  });
});
