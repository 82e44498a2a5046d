import { z } from 'zod';
import { coordinate, degrees, text } from './primitives.ts';

/** Bytes of the picture as it is kept, a data address: every tablet of the team keeps and sends it. */
export const PICTURE_BYTES = 300 * 1024;

/**
 * The picture of an existing plan that lies under the drawing. It is scaled down before it is kept. `scale` in mm of the room a px of
 * the picture; `x`, `y` its middle on the plan (mm); `fade` 0 (as it is) to 100 (gone). What `room.picture` holds otherwise is kept
 * and not drawn.
 */
const picture = z.looseObject({
  /** Only pictures that hold no code, and none that is fetched from elsewhere. */
  source: z
    .string()
    .max(2 * PICTURE_BYTES)
    .regex(/^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+=*$/),
  /** px */
  width: z.number().int().positive().max(20_000),
  height: z.number().int().positive().max(20_000),
  x: coordinate,
  y: coordinate,
  scale: z.number().positive().max(10_000),
  rotation: degrees.default(0),
  fade: z.number().min(0).max(100).default(50),
  shown: z.boolean().default(true),
  name: text.optional(),
});
export type Picture = z.output<typeof picture>;

const read = new WeakMap<object, Picture | null>();

/** What `room.picture` holds, when it is a picture as above; null: none, or another thing. */
export function pictureOf(value: unknown): Picture | null {
  if (typeof value !== 'object' || value === null) return null;
  const known = read.get(value);
  if (known !== undefined) return known;
  const parsed = picture.safeParse(value);
  const found = parsed.success ? parsed.data : null;
  read.set(value, found);
  return found;
}
