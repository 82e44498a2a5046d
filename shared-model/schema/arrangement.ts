import { z } from 'zod';
import { limits } from './limits.ts';
import { coordinate, count, degrees, extent, id, outline, size, text, uniqueIds } from './primitives.ts';

export const side = z.enum(['front', 'back', 'left', 'right']);
const pieceKind = z.enum(['shelf', 'table', 'seat', 'mat-stand', 'easel', 'rug', 'adult-seat', 'other']);

export const level = z.looseObject({
  id,
  /** mm above the floor */
  surface: extent,
  /** mm of clear height; null: up to the board above, the topmost is open */
  clear: size.nullable().default(null),
  depth: size.nullable().default(null),
  setBack: extent.default(0),
});

export const piece = z.looseObject({
  id,
  kind: pieceKind,
  name: text.default(''),
  /** what a shelf or table is known by; absent: from its name or its place in the file */
  number: z.number().int().min(0).max(9999).optional(),
  x: coordinate,
  y: coordinate,
  rotation: degrees.default(0),
  width: size,
  depth: size,
  height: size.nullable().default(null),
  locked: z.boolean().default(false),
  anchored: z.boolean().nullable().default(null),
  sides: z.array(side).max(4).default(['front']),
  divider: z.boolean().default(false),
  for: z.enum(['children', 'adults']).default('children'),
  closed: z.boolean().default(false),
  toeRecess: extent.default(0),
  panel: extent.default(20),
  reading: z.enum(['rows', 'columns']).default('rows'),
  levels: z.array(level).max(limits.levels).superRefine(uniqueIds('board of this shelf')).default([]),
  seatSides: z.partialRecord(side, count).default({}),
  /** the table a seat belongs to */
  table: id.nullable().default(null),
  outline: outline.optional(),
  round: z.boolean().optional(),
  seeThrough: z.boolean().optional(),
});

export const placement = z.looseObject({
  material: id,
  piece: id.nullable().default(null),
  side: side.default('front'),
  level: id.nullable().default(null),
  /** mm from the left end of the board to the tray's left edge; on the floor: plan x */
  x: coordinate,
  /** mm from the board's front edge to the tray's front edge; on the floor: plan y */
  y: coordinate.default(0),
  turned: z.boolean().default(false),
});

export const watchPlace = z.looseObject({ id, x: coordinate, y: coordinate, eye: size.default(1100) });

export const arrangement = z.looseObject({
  id,
  name: text.default(''),
  pieces: z.array(piece).max(limits.pieces).superRefine(uniqueIds('piece')).default([]),
  /** the order in which a child meets the shelves */
  walk: z
    .array(z.looseObject({ piece: id, side }))
    .max(limits.pieces * 4)
    .optional(),
  watch: z.array(watchPlace).max(limits.list).superRefine(uniqueIds('watching place')).optional(),
  placements: z
    .array(placement)
    .max(limits.materials)
    .superRefine((list, context) => {
      const seen = new Set<string>();
      list.forEach((entry, index) => {
        if (seen.has(entry.material))
          context.addIssue({
            code: 'custom',
            path: [index, 'material'],
            message: 'a material placed once in an arrangement',
            input: entry.material,
          });
        seen.add(entry.material);
      });
    })
    .default([]),
});
