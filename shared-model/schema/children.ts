import { z } from 'zod';
import { limits } from './limits.ts';
import { count, id, months, size, text } from './primitives.ts';

export const childGroup = z.looseObject({
  id,
  name: text.default(''),
  fromMonths: months,
  toMonths: months,
  count,
});

export const children = z.looseObject({
  groups: z.array(childGroup).max(100).default([]),
  growth: z.literal('cdc-2000').default('cdc-2000'),
  percentile: z.number().gt(0).lt(100).default(5),
  /** mm; a measured stature replaces the table */
  smallestStature: size.nullable().default(null),
  /** mm; head height of a child at work on a mat */
  head: size.default(550),
});

const adultRole = z.enum(['lead', 'qualified', 'assistant']);
const adultEntry = z.looseObject({ role: adultRole, count });
/** A plain number n: one lead, n-1 assistants. */
export const adults = z.union([
  z.array(adultEntry).max(100),
  count.transform((n) =>
    n === 0 ? [] : [{ role: 'lead' as const, count: 1 }, ...(n > 1 ? [{ role: 'assistant' as const, count: n - 1 }] : [])],
  ),
]);

export const enrolment = z.looseObject({
  from: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a date like 2027-04-01'),
  groups: z
    .array(z.looseObject({ fromMonths: months, toMonths: months, count }))
    .max(limits.list)
    .default([]),
});
