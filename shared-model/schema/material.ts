import { z } from 'zod';
import { extent, id, mass, months, size, text } from './primitives.ts';

export const sureness = z.enum(['published', 'common practice', 'own']);
const mode = z.enum(['match', 'pair', 'grade', 'sequence', 'practise', 'name']);
const materialState = z.enum(['out', 'store', 'mend', 'make', 'wanted']);
const mat = z.looseObject({ width: size, depth: size });

export const material = z.looseObject({
  id,
  name: text,
  catalogue: id.nullable().default(null),
  area: text.default(''),
  strand: text.default(''),
  /** place within its strand, smaller is easier, ties allowed */
  step: z.number().min(0).max(100_000).nullable().optional(),
  /** prerequisites: ids here or of the catalogue */
  after: z.array(id).max(200).default([]),
  afterSure: z.record(id, sureness).default({}),
  isolates: z.array(text).max(50).default([]),
  mode: mode.nullable().default(null),
  control: text.default(''),
  words: z.array(text).max(200).default([]),
  pieces: z.number().int().min(0).max(100_000).nullable().default(null),
  /** the smallest loose piece: three extents, or its greatest extent (mm) */
  smallest: z
    .union([z.tuple([size, size, size]), size])
    .nullable()
    .default(null),
  width: size.nullable().default(null),
  depth: size.nullable().default(null),
  height: size.nullable().default(null),
  mass: mass.nullable().default(null),
  /** mm above its base; null: min(50, height/2) */
  grip: extent.nullable().default(null),
  hands: z
    .union([z.literal(1), z.literal(2)])
    .nullable()
    .default(null),
  carried: z.enum(['whole', 'pieces', 'stays']).nullable().default(null),
  /** kg carried at once */
  heaviest: mass.nullable().default(null),
  stands: z.union([z.enum(['own', 'none']), z.looseObject({ with: id })]).default('own'),
  work: z.enum(['mat', 'table', 'either', 'standing']).nullable().default(null),
  mat: mat.nullable().default(null),
  fromMonths: months.nullable().default(null),
  toMonths: months.nullable().default(null),
  state: materialState.default('out'),
  smallParts: z.boolean().nullable().default(null),
  /** how each value is known: published | common practice | estimate | own (free text is kept) */
  sure: z.record(z.string().max(64), text).default({}),
});
