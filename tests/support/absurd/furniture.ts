import fc from 'fast-check';
import { coordinate, count, degrees, each, extent, maybe, orNull, size, word } from './numbers.ts';
import { strangeRing } from './rooms.ts';

const side = fc.constantFrom('front', 'back', 'left', 'right');
/** Boards at one height, below the floor of the one beneath, without clear height, above the shelf's top. */
const level = fc.record({ surface: extent, clear: orNull(size), depth: orNull(size), setBack: extent });
const flags = fc.record({
  name: word,
  anchored: orNull(fc.boolean()),
  divider: fc.boolean(),
  for: fc.constantFrom('children', 'children', 'adults'),
  closed: fc.boolean(),
  toeRecess: extent,
  panel: extent,
  reading: fc.constantFrom('rows', 'columns'),
  outline: maybe(strangeRing),
  round: maybe(fc.boolean()),
  seeThrough: maybe(fc.boolean()),
});
const place = fc.record({ x: coordinate, y: coordinate, rotation: degrees, width: size, depth: size, height: orNull(size) });
const kind = fc.constantFrom('shelf', 'shelf', 'table', 'seat', 'mat-stand', 'easel', 'rug', 'adult-seat', 'other');
const piece = fc
  .tuple(
    place,
    fc.option(flags, { nil: {} }),
    fc.record({
      kind,
      // A side may be named twice, or none at all.
      sides: maybe(fc.array(side, { maxLength: 4 })),
      levels: each('l', 4, level),
      seatSides: fc.dictionary(side, count, { maxKeys: 3 }),
      table: fc.constantFrom(null, 'p0', 'p1', 'p2', 'gone'),
    }),
  )
  .map(([where, more, what]) => ({ ...where, ...more, ...what }));

export const absurdPieces = fc.integer({ min: 0, max: 6 }).chain((max) => each('p', max, piece));

const shelf = fc.record({
  kind: fc.constant('shelf'),
  x: fc.integer({ min: 5, max: 55 }).map((n) => n * 100),
  y: fc.constantFrom(160, 2000, 4840),
  rotation: fc.constantFrom(0, 90, 180),
  width: fc.constantFrom(1200, 600, 1e-3),
  depth: fc.constantFrom(320, 1, 5000),
  height: orNull(fc.constantFrom(700, 1, 100_000)),
  sides: maybe(fc.array(side, { maxLength: 4 })),
  levels: each('l', 5, level),
  panel: maybe(extent),
  toeRecess: maybe(extent),
  divider: fc.boolean(),
  reading: fc.constantFrom('rows', 'columns'),
});
/** Shelves as somebody might stand them, with boards as nobody would. */
export const absurdShelves = each('p', 4, shelf);

export const absurdWatch = maybe(each('w', 3, fc.record({ x: coordinate, y: coordinate, eye: size })));
export const absurdWalk = maybe(fc.array(fc.record({ piece: fc.constantFrom('p0', 'p1', 'gone'), side }), { maxLength: 4 }));

/** Trays that overlap, hang over, stand on boards that are gone, on tables, on the floor, far away. */
export const absurdPlacements = fc
  .array(
    fc.record({
      piece: fc.constantFrom('p0', 'p0', 'p1', 'p2', 'gone', null),
      side,
      level: fc.constantFrom('l0', 'l1', 'l2', 'gone', null),
      x: coordinate,
      y: coordinate,
      turned: fc.boolean(),
    }),
    { maxLength: 10 },
  )
  .map((list) => list.map((one, i) => ({ material: `m${i}`, ...one })));
