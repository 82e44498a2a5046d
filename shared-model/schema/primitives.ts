import { z } from 'zod';
import { limits } from './limits.ts';

const reserved = ['__proto__', 'constructor', 'prototype'];

export const id = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,64}$/, 'an id of 1 to 64 letters, digits, _ or -')
  .refine((text) => !reserved.includes(text), 'an id that is no reserved word');
export const text = z.string().max(limits.text);
/** mm on the plan */
export const coordinate = z.number().min(-limits.coordinate).max(limits.coordinate);
/** mm, above zero */
export const size = z.number().positive().max(limits.size);
/** mm, zero allowed */
export const extent = z.number().min(0).max(limits.size);
export const degrees = z.number().min(-3600).max(3600);
export const months = z.number().min(0).max(240);
export const count = z.number().int().min(0).max(10_000);
/** kg */
export const mass = z.number().min(0).max(1_000);
/** Local outline of a piece or the outline of a zone: [[x, y], …] in mm. */
export const outline = z
  .array(z.tuple([coordinate, coordinate]))
  .min(3)
  .max(limits.corners);

/** An id list is unique in itself. */
export function uniqueIds<T extends { id: string }>(what: string) {
  return (list: T[], context: z.RefinementCtx<T[]>): void => {
    const seen = new Set<string>();
    list.forEach((entry, index) => {
      if (seen.has(entry.id))
        context.addIssue({ code: 'custom', path: [index, 'id'], message: `an id no other ${what} has`, input: entry.id });
      seen.add(entry.id);
    });
  };
}
