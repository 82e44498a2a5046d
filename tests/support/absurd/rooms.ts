import fc from 'fast-check';
import { coordinate, count, degrees, each, extent, maybe, orNull, size, word } from './numbers.ts';

type Ring = [number, number][];

/** Outlines that cross, touch, turn back on themselves, enclose nothing, run the wrong way round, or have many corners. */
export const strangeRing: fc.Arbitrary<Ring> = fc.oneof(
  fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 8 }),
  fc.constantFrom<Ring>(
    [
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    [
      [0, 0],
      [1000, 0],
      [2000, 0],
    ],
    [
      [-500, -500],
      [500, 500],
      [500, -500],
      [-500, 500],
    ],
    [
      [0, -500],
      [294, 405],
      [-476, -155],
      [476, -155],
      [-294, 405],
    ],
    [
      [0, 0],
      [2000, 0],
      [2000, 0],
      [2000, 1500],
      [0, 1500],
    ],
    [
      [0, 0],
      [2000, 0],
      [1000, 0],
      [1000, 1500],
      [0, 1500],
    ],
    [
      [0, 0],
      [3000, 0],
      [3000, 3000],
      [0, 3000],
      [0, 1e-7],
      [2999, 1e-7],
      [2999, 1],
      [0, 1],
    ],
  ),
  fc
    .integer({ min: 3, max: 12 })
    .map((n) => Array.from({ length: n }, (_, i): [number, number] => [1000 * Math.cos(i) * (1 + (i % 3)), 1000 * Math.sin(i)])),
);

const box = (w: number, d: number): Ring => [
  [0, 0],
  [w, 0],
  [w, d],
  [0, d],
];
const walls: fc.Arbitrary<Ring> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(fc.integer({ min: 10, max: 70 }), fc.integer({ min: 10, max: 60 })).map(([w, d]) => box(w * 100, d * 100)),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom<Ring>(
      [
        [0, 0],
        [6000, 0],
        [6000, 2000],
        [2000, 2000],
        [2000, 2200],
        [6000, 2200],
        [6000, 5000],
        [0, 5000],
      ],
      [
        [0, 0],
        [0, 5000],
        [6000, 5000],
        [6000, 0],
      ],
      [
        [0, 0],
        [6000, 0],
        [6000, 5000],
        [3000, 0],
        [0, 5000],
      ],
      [
        [0, 0],
        [6000, 0],
        [6000, 5000],
        [3000, 1e-6],
        [0, 5000],
      ],
    ),
  },
  { weight: 2, arbitrary: strangeRing },
  { weight: 1, arbitrary: fc.tuple(size, size).map(([w, d]) => box(w, d)) },
  { weight: 1, arbitrary: fc.constantFrom(box(1e6, 1e6), box(1e-3, 5000), box(0.001, 0.001), box(-6000, -5000)) },
);
const swing = fc.constantFrom('in-left', 'in-right', 'out-left', 'out-right', 'sliding', 'none');
const wall = fc.constantFrom('c0', 'c0', 'c1', 'c2', 'gone');
const opening = fc.record({
  kind: fc.constantFrom('door', 'door', 'passage', 'window'),
  from: wall,
  offset: extent,
  width: size,
  clear: orNull(size),
  depth: orNull(extent),
  swing,
  exit: fc.boolean(),
  main: maybe(fc.boolean()),
});
const usualDoor = fc.record({
  kind: fc.constant('door'),
  from: fc.constant('c0'),
  offset: fc.constant(100),
  width: fc.constant(900),
  swing,
  exit: fc.constant(true),
});
const fixture = fc.record({
  kind: fc.constantFrom('column', 'partition', 'sink', 'radiator', 'hearth', 'built-in', 'step', 'other'),
  x: coordinate,
  y: coordinate,
  width: size,
  depth: size,
  height: orNull(size),
  rotation: degrees,
  front: maybe(fc.boolean()),
  walkable: fc.boolean(),
  outline: maybe(strangeRing),
  round: maybe(fc.boolean()),
  seeThrough: maybe(fc.boolean()),
});
const zone = fc.record({
  kind: fc.constantFrom('passage', 'walkway', 'toilet', 'kitchen', 'storage', 'staff', 'cots'),
  outline: strangeRing,
});
const corner = fc.constantFrom('c0', 'c1', 'c2', 'c3', 'gone');
const survey = fc.record({
  walls: fc.array(fc.record({ from: corner, length: size, turn: fc.constantFrom(90, -90, 0, 360, -360, 1e-9) }), { maxLength: 6 }),
  diagonals: fc.array(fc.record({ from: corner, to: corner, length: size }), { maxLength: 3 }),
});

export const absurdRoom = fc.record({
  corners: walls.map((ring) => ring.map(([x, y], i) => ({ id: `c${i}`, x, y }))),
  openings: fc
    .tuple(fc.array(usualDoor, { maxLength: 1 }), fc.array(opening, { maxLength: 3 }))
    .map(([one, more]) => [...one, ...more].map((o, i) => ({ id: `d${i}`, ...o }))),
  // A fixture may have the id of a piece.
  fixtures: fc.constantFrom('f', 'p').chain((prefix) => each(prefix, 3, fixture)),
  zones: each('z', 2, zone),
  otherRooms: fc.array(fc.record({ name: word, area: fc.constantFrom(0, 1e-9, 6.2, 10_000) }), { maxLength: 2 }),
  toilets: orNull(count),
  basins: orNull(count),
  survey: orNull(survey),
});
/** A plain room, for shelves and children that are absurd by themselves. */
export const plainWalls = fc.constant({
  corners: box(6000, 5000).map(([x, y], i) => ({ id: `c${i}`, x, y })),
  openings: [{ id: 'd0', kind: 'door', from: 'c0', offset: 400, width: 900, clear: 850, swing: 'out-left', exit: true }],
});
