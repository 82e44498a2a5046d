import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChildModel, childModel, GROWTH_MONTHS } from '#model/measures/childModel.ts';
import { canTake, highestGrip } from '#model/measures/reachCurves.ts';
import { runs } from '#tests/support/runs.ts';

// A child who grows (older at the same percentile, of a higher percentile, taller as measured) reaches no less. Cases by
// fast-check, a general-purpose library for properties.
const months = fc.double({ min: GROWTH_MONTHS.from, max: GROWTH_MONTHS.to, noNaN: true });
const percentile = fc.double({ min: 1, max: 99, noNaN: true });
const place = fc.record({ depth: fc.double({ min: 0, max: 600, noNaN: true }), height: fc.double({ min: 0, max: 1800, noNaN: true }) });
const inOrder = (pair: readonly [number, number]): readonly [number, number] => (pair[0] <= pair[1] ? pair : [pair[1], pair[0]]);

function expectNoLess(small: ChildModel | null, tall: ChildModel | null, { depth, height }: { depth: number; height: number }): void {
  if (!small || !tall) throw new Error('both ages are in the tables');
  for (const length of ['stature', 'shoulder', 'arm', 'eye'] as const)
    expect(tall[length], length).toBeGreaterThanOrEqual(small[length] - 1e-9);
  const before = highestGrip(small, depth);
  if (before !== null) expect(highestGrip(tall, depth), `at ${depth} deep`).toBeGreaterThanOrEqual(before - 1e-9);
  if (canTake(small, depth, height)) expect(canTake(tall, depth, height), `${height} high, ${depth} deep`).toBe(true);
}

describe('a child who grows reaches no less', () => {
  const numRuns = runs(2000, 20_000);
  it('older', () => {
    fc.assert(
      fc.property(fc.tuple(months, months), percentile, place, (ages, at, where) => {
        const [young, old] = inOrder(ages);
        expectNoLess(childModel({ months: young, percentile: at }), childModel({ months: old, percentile: at }), where);
      }),
      { numRuns },
    );
  });
  it('of a higher percentile', () => {
    fc.assert(
      fc.property(months, fc.tuple(percentile, percentile), place, (age, percentiles, where) => {
        const [low, high] = inOrder(percentiles);
        expectNoLess(childModel({ months: age, percentile: low }), childModel({ months: age, percentile: high }), where);
      }),
      { numRuns },
    );
  });
  it('taller as measured', () => {
    const stature = fc.double({ min: 700, max: 1700, noNaN: true });
    fc.assert(
      fc.property(months, fc.tuple(stature, stature), place, (age, statures, where) => {
        const [low, high] = inOrder(statures);
        const of = (measuredStature: number) => childModel({ months: age, percentile: 5, measuredStature });
        expectNoLess(of(low), of(high), where);
      }),
      { numRuns },
    );
  });
});
