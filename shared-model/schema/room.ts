import { z } from 'zod';
import { limits } from './limits.ts';
import { coordinate, count, degrees, extent, id, outline, size, text, uniqueIds } from './primitives.ts';

export const corner = z.looseObject({ id, x: coordinate, y: coordinate });

const openingKind = z.enum(['door', 'window', 'passage']);
const swing = z.enum(['in-left', 'in-right', 'out-left', 'out-right', 'sliding', 'none']);
export const opening = z.looseObject({
  id,
  kind: openingKind,
  name: text.optional(),
  /** corner where the wall starts */
  from: id,
  /** mm along the wall */
  offset: extent,
  width: size,
  /** mm, opening with the leaf at 90 degrees */
  clear: size.nullable().default(null),
  /** mm, thickness of the opening */
  depth: extent.nullable().default(null),
  swing: swing.default('none'),
  exit: z.boolean().default(false),
  main: z.boolean().optional(),
  sill: extent.default(0),
});

const fixtureKind = z.enum(['column', 'partition', 'sink', 'radiator', 'hearth', 'built-in', 'step', 'other']);
export const fixture = z.looseObject({
  id,
  kind: fixtureKind,
  name: text.optional(),
  x: coordinate,
  y: coordinate,
  width: size,
  depth: size,
  height: size.nullable().default(null),
  rotation: degrees.default(0),
  front: z.boolean().optional(),
  walkable: z.boolean().default(false),
  outline: outline.optional(),
  round: z.boolean().optional(),
  seeThrough: z.boolean().optional(),
});

const zoneKind = z.enum(['passage', 'walkway', 'toilet', 'kitchen', 'storage', 'staff', 'cots']);
export const zone = z.looseObject({ id, kind: zoneKind, outline });

export const survey = z.looseObject({
  walls: z
    .array(
      z.looseObject({
        from: id,
        length: size,
        /** degrees clockwise to the next wall */
        turn: z.number().min(-360).max(360),
        /** diagonals: the angle was not measured itself, `turn` is what the diagonals make it */
        turnBy: z.enum(['typed', 'diagonals']).optional(),
      }),
    )
    .max(limits.corners)
    .default([]),
  diagonals: z
    .array(z.looseObject({ from: id, to: id, length: size }))
    .max(limits.list)
    .default([]),
});

export const room = z.looseObject({
  /** inner face of the walls, clockwise on the plan */
  corners: z.array(corner).min(3).max(limits.corners).superRefine(uniqueIds('corner')),
  openings: z.array(opening).max(limits.list).superRefine(uniqueIds('opening')).default([]),
  fixtures: z.array(fixture).max(limits.list).superRefine(uniqueIds('fixture')).default([]),
  zones: z.array(zone).max(limits.list).superRefine(uniqueIds('zone')).default([]),
  /** m² */
  otherRooms: z
    .array(z.looseObject({ name: text, area: z.number().min(0).max(10_000) }))
    .max(100)
    .default([]),
  toilets: count.nullable().default(null),
  basins: count.nullable().default(null),
  survey: survey.nullable().default(null),
  /** The picture under the drawing (picture.ts); another thing is kept and not drawn. */
  picture: z.unknown().default(null),
});
