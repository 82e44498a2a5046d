import fc from 'fast-check';
import { limits } from '#model/schema/limits.ts';

/** Numbers that the schema accepts and nobody would measure, among some that somebody might. */
const { coordinate: far, size: large } = limits;
const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const usual = (steps: number) => fc.integer({ min: 0, max: steps }).map((n) => n * 100);

/** mm on the plan; many of them alike, so that things touch, cover and hit one another. */
export const coordinate = fc.oneof(
  { weight: 8, arbitrary: usual(60) },
  { weight: 3, arbitrary: within(-500, 6500) },
  { weight: 2, arbitrary: fc.constantFrom(0, -0, 1e-9, -1e-300, 0.1 + 0.2, far, -far, 999_999.999_999) },
  { weight: 1, arbitrary: within(-far, far) },
);
/** mm, above zero */
export const size = fc.oneof(
  { weight: 8, arbitrary: usual(24).map((n) => n + 100) },
  { weight: 3, arbitrary: within(1, 3000) },
  { weight: 2, arbitrary: fc.constantFrom(Number.MIN_VALUE, 1e-9, 1e-3, 1, large) },
);
/** mm, zero among them */
export const extent = fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 4, arbitrary: size });
export const degrees = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(0, 90, 180, 270, -90) },
  { weight: 2, arbitrary: within(-3600, 3600) },
  { weight: 1, arbitrary: fc.constantFrom(3600, 1e-12, 45, 89.999_999_9) },
);
export const count = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 30 }) }, { weight: 1, arbitrary: fc.constant(10_000) });
export const months = fc.oneof(fc.integer({ min: 0, max: 160 }), fc.constantFrom(0, 23.999, 24, 30, 36.5, 240));
export const kg = fc.oneof(within(0, 5), fc.constantFrom(0, 1e-12, 1000));
export const word = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('', 'a', 'b', '{what}') },
  { weight: 1, arbitrary: fc.string({ maxLength: 8 }) },
);
export const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
export const orNull = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });

/** One thing for each of up to `max` ids. */
export const each = <T extends object>(prefix: string, max: number, make: fc.Arbitrary<T>) =>
  fc.array(make, { maxLength: max }).map((list) => list.map((thing, i) => ({ id: `${prefix}${i}`, ...thing })));
