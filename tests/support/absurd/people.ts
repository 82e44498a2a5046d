import fc from 'fast-check';
import { count, each, extent, kg, maybe, months, orNull, size, word } from './numbers.ts';

const materialId = fc.constantFrom('m0', 'm1', 'm2', 'm3', 'gone', 'se-cyl-diam');
/** Prerequisites that run in circles, things that stand with themselves, no sizes, sizes larger than the room. */
export const absurdMaterial = fc.record({
  name: word,
  catalogue: fc.constantFrom(null, 'se-cyl-diam', 'gone'),
  area: word,
  strand: fc.constantFrom('', 'a', 'a', 'b'),
  step: orNull(fc.constantFrom(0, 1, 2, 3, 1e-9, 100_000)),
  after: fc.array(materialId, { maxLength: 3 }),
  afterSure: fc.dictionary(materialId, fc.constantFrom('published', 'common practice', 'own'), { maxKeys: 2 }),
  isolates: fc.array(fc.constantFrom('diameter', 'height', ''), { maxLength: 3 }),
  mode: fc.constantFrom(null, 'match', 'grade', 'sequence'),
  pieces: orNull(count),
  smallest: fc.oneof(fc.constant(null), size, fc.tuple(size, size, size)),
  width: orNull(size),
  depth: orNull(size),
  height: orNull(size),
  mass: orNull(kg),
  grip: orNull(extent),
  hands: fc.constantFrom(null, 1, 2),
  carried: fc.constantFrom(null, 'whole', 'pieces', 'stays'),
  heaviest: orNull(kg),
  stands: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('own', 'none') },
    { weight: 1, arbitrary: materialId.map((id) => ({ with: id })) },
  ),
  work: fc.constantFrom(null, 'mat', 'table', 'either', 'standing'),
  mat: orNull(fc.record({ width: size, depth: size })),
  fromMonths: orNull(months),
  toMonths: orNull(months),
  state: fc.constantFrom('out', 'out', 'out', 'store', 'mend', 'make', 'wanted'),
  smallParts: orNull(fc.boolean()),
});

const group = fc.record({ fromMonths: months, toMonths: months, count });
export const absurdPeople = fc.record({
  children: maybe(
    fc.record({
      groups: each('g', 3, group),
      percentile: fc.constantFrom(5, 50, 1e-12, 99.999_999),
      smallestStature: orNull(size),
      head: size,
    }),
  ),
  adults: fc.oneof(count, fc.array(fc.record({ role: fc.constantFrom('lead', 'qualified', 'assistant'), count }), { maxLength: 3 })),
  enrolment: maybe(
    fc.array(fc.record({ from: fc.constantFrom('2027-04-01', '2027-99-99', '0000-00-00'), groups: fc.array(group, { maxLength: 2 }) }), {
      maxLength: 3,
    }),
  ),
  ruleSet: fc.constantFrom('own', 'england', 'us-california', 'us-texas', 'ireland', 'scotland', 'toString', ''),
  exitRules: fc.constantFrom(null, 'us-ibc', 'england-adb'),
  sprinklered: fc.boolean(),
  service: fc.constantFrom(null, 'day-care', 'gone'),
  asked: fc.dictionary(fc.constantFrom('walkway_in_room', 'table_chair', 'gone'), fc.constantFrom('deduct', 'count'), { maxKeys: 2 }),
  display: fc.record({ units: fc.constantFrom('metric', 'imperial'), readingDirection: fc.constantFrom('ltr', 'rtl') }),
});

const figure = fc.oneof(size, fc.constantFrom(-1, 0, '900', null, true, [], {}, 1e300));
/** The class's own figures, right, wrong and of no check. */
export const absurdFigures = fc.record({
  access: maybe(
    fc.record({
      required: fc.boolean(),
      wheelchair: fc.boolean(),
      routeWidth: size,
      pinchWidth: size,
      pinchLength: size,
      turning: size,
      leastWidth: size,
      frontStrip: extent,
    }),
  ),
  floorWork: maybe(fc.record({ mat: fc.record({ width: size, depth: size }), gap: extent, wanted: fc.constantFrom(null, 0, 1000) })),
  options: fc.dictionary(
    fc.constantFrom('order/crowded', 'reach/see', 'exit/far', 'exit/blocked', 'steady/tip', 'places/area', 'gone/gone', 'toString'),
    fc.dictionary(fc.constantFrom('trayGap', 'spare', 'oneExit', 'width', 'm2PerChild', 'gone'), figure, { maxKeys: 2 }),
    { maxKeys: 2 },
  ),
});
