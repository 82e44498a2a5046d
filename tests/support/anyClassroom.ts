import fc from 'fast-check';
import { readClassroom } from '#model/schema/readFile.ts';
import type { Classroom } from '#model/schema/types.ts';

/** Keys that a later version or another program may have added, some of them nasty. */
const extraKey = fc.constantFrom(
  'x-colour',
  '~order',
  '~~odd',
  '',
  'größe',
  'toString',
  'hasOwnProperty',
  'size',
  'with space',
  '~id',
  '~absent',
);
const json = fc
  .jsonValue({ maxDepth: 3 })
  .map((value) => JSON.parse(JSON.stringify(value).replaceAll(/__proto__|constructor|prototype/g, 'p')));
const extras = fc.dictionary(extraKey, json, { maxKeys: 3 });

const mm = fc.integer({ min: -20_000, max: 20_000 }).map((n) => n / 4);
const size = fc.integer({ min: 1, max: 8_000 }).map((n) => n / 2);
const word = fc.string({ maxLength: 12 });
const side = fc.constantFrom('front', 'back', 'left', 'right');
const ids = (prefix: string, max: number) => fc.integer({ min: 0, max }).map((n) => Array.from({ length: n }, (_, i) => `${prefix}${i}`));
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });

function withExtras<T extends object>(of: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.tuple(extras, of).map(([more, thing]) => {
    const kept = Object.fromEntries(Object.entries(thing).filter(([, value]) => value !== undefined));
    return { ...more, ...kept } as T;
  });
}

/** One thing for each id, in a shuffled order. */
function each(prefix: string, max: number, make: (id: string) => fc.Arbitrary<object>): fc.Arbitrary<object[]> {
  return ids(prefix, max)
    .chain((list) => fc.shuffledSubarray(list, { minLength: list.length }))
    .chain((list) => fc.tuple(...list.map((id) => withExtras(make(id)))));
}

const level = (id: string) => fc.record({ id: fc.constant(id), surface: size, clear: fc.option(size), setBack: maybe(size) });
const piece = (id: string) =>
  fc.record({
    id: fc.constant(id),
    kind: fc.constantFrom('shelf', 'table', 'seat', 'rug', 'adult-seat'),
    name: word,
    x: mm,
    y: mm,
    width: size,
    depth: size,
    height: fc.option(size),
    sides: maybe(fc.uniqueArray(side, { maxLength: 4 })),
    seatSides: maybe(fc.dictionary(side, fc.integer({ min: 0, max: 4 }))),
    table: fc.constantFrom(undefined, null, 'p0', 'gone'),
    levels: each('l', 4, level),
    round: maybe(fc.boolean()),
    outline: maybe(
      fc.constant([
        [0, 0],
        [10, 0],
        [10, 10],
      ]),
    ),
  });
const placement = (material: string) =>
  fc.record({
    material: fc.constant(material),
    piece: fc.constantFrom(null, 'p0', 'p1', 'gone'),
    side,
    level: fc.constantFrom(null, 'l0', 'l9'),
    x: mm,
    y: mm,
  });
const arrangement = (id: string) =>
  fc.record({
    id: fc.constant(id),
    name: word,
    pieces: each('p', 5, piece),
    placements: each('m', 5, placement).map((list) => list),
    walk: maybe(fc.array(withExtras(fc.record({ piece: fc.constantFrom('p0', 'p1', 'gone'), side })), { maxLength: 4 })),
    watch: maybe(each('w', 2, (watchId) => fc.record({ id: fc.constant(watchId), x: mm, y: mm }))),
  });
const material = (id: string) =>
  fc.record({
    id: fc.constant(id),
    name: word,
    strand: word,
    step: fc.option(fc.integer({ min: 0, max: 90 })),
    after: fc.subarray(['m0', 'm1', 'elsewhere']),
    afterSure: maybe(fc.constant({ m0: 'published' })),
    words: fc.array(word, { maxLength: 3 }),
    smallest: fc.oneof(fc.constant(null), size, fc.tuple(size, size, size)),
    stands: fc.constantFrom('own', 'none', { with: 'm0' }, { with: 'gone' }),
    sure: maybe(fc.dictionary(fc.constantFrom('mass', 'width'), word)),
  });
const room = fc.record({
  corners: ids('c', 6)
    .map((list) => [...list, 'k1', 'k2', 'k3'])
    .chain((list) => fc.tuple(...list.map((id) => withExtras(fc.record({ id: fc.constant(id), x: mm, y: mm }))))),
  openings: each('d', 3, (id) =>
    fc.record({
      id: fc.constant(id),
      kind: fc.constantFrom('door', 'window'),
      from: fc.constantFrom('k1', 'gone'),
      offset: size,
      width: size,
    }),
  ),
  fixtures: each('f', 3, (id) => fc.record({ id: fc.constant(id), kind: fc.constant('sink'), x: mm, y: mm, width: size, depth: size })),
  zones: each('z', 2, (id) =>
    fc.record({
      id: fc.constant(id),
      kind: fc.constant('toilet'),
      outline: fc.constant([
        [0, 0],
        [1, 0],
        [1, 1],
      ]),
    }),
  ),
  otherRooms: fc.array(withExtras(fc.record({ name: word, area: size })), { maxLength: 2 }),
  survey: fc.constantFrom(
    null,
    undefined,
    {},
    {
      walls: [
        { from: 'k1', length: 10, turn: 90, wobble: 1 },
        { from: 'k1', length: 11, turn: 90 },
      ],
      by: 'two of us',
    },
    {
      diagonals: [
        { from: 'k1', to: 'k2', length: 9 },
        { from: 'k1', to: 'k3', length: 8 },
      ],
    },
  ),
  picture: json,
});

const input = withExtras(
  fc.record({
    format: fc.constant('lowshelf.classroom'),
    version: fc.constant(1),
    name: word,
    display: maybe(withExtras(fc.record({ units: fc.constantFrom('metric', 'imperial') }))),
    children: maybe(
      withExtras(
        fc.record({
          groups: fc.array(
            withExtras(
              fc.record({ id: fc.constantFrom('g1', 'g2'), fromMonths: fc.constant(36), toMonths: fc.constant(48), count: fc.nat(20) }),
            ),
            { maxLength: 3 },
          ),
          percentile: fc.integer({ min: 1, max: 99 }),
        }),
      ),
    ),
    adults: fc.oneof(fc.nat(4), fc.constant([{ role: 'lead', count: 1, note: 'x' }])),
    enrolment: maybe(fc.constant([{ from: '2027-04-01', groups: [{ fromMonths: 36, toMonths: 48, count: 3 }] }])),
    asked: maybe(fc.constant({ walkway_in_room: 'count' })),
    options: maybe(fc.dictionary(fc.constantFrom('order/crowded', 'way/width'), fc.dictionary(extraKey, json, { maxKeys: 2 }))),
    access: maybe(withExtras(fc.record({ routeWidth: size }))),
    floorWork: maybe(withExtras(fc.record({ mat: withExtras(fc.record({ width: size, depth: size })), gap: size }))),
    room: withExtras(room),
    materials: each('m', 5, material),
    arrangements: each('a', 2, arrangement).chain((list) => withExtras(arrangement('last')).map((one) => [...list, one])),
    moveDay: fc.oneof(json, fc.constant({}), fc.dictionary(extraKey, json, { maxKeys: 3 })),
    current: fc.constantFrom(null, 'a0', 'last', 'gone'),
    left: fc.array(
      withExtras(fc.record({ key: fc.constantFrom('way/width:s1', '~odd', 'prototype', 'order/sequence:m1+m2#a'), reason: word })),
      { maxLength: 4 },
    ),
    notes: each('n', 3, (id) => fc.record({ id: fc.constant(id), text: word, on: fc.constantFrom(null, 'p0', 'gone') })),
  }),
);

/** Any classroom that a file may hold, unknown keys at every level, references that point at nothing among them. */
export const anyClassroom: fc.Arbitrary<Classroom> = input.map((file) => {
  const read = readClassroom(JSON.parse(JSON.stringify(file)));
  if (!read.ok) throw new Error(read.problems.map((p) => `${p.path}: found ${p.found}, expected ${p.expected}`).join('\n'));
  return read.classroom;
});
