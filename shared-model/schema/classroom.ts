import { z } from 'zod';
import { arrangement } from './arrangement.ts';
import { adults, children, enrolment } from './children.ts';
import { limits } from './limits.ts';
import { material } from './material.ts';
import { coordinate, id, size, text, uniqueIds } from './primitives.ts';
import { room } from './room.ts';

export const FORMAT = 'lowshelf.classroom';
export const VERSION = 1;

const display = z.looseObject({
  units: z.enum(['metric', 'imperial']).default('metric'),
  readingDirection: z.enum(['ltr', 'rtl']).default('ltr'),
});

export const access = z.looseObject({
  required: z.boolean().default(false),
  wheelchair: z.boolean().default(false),
  routeWidth: size.default(915),
  pinchWidth: size.default(815),
  pinchLength: size.default(610),
  turning: size.default(1525),
  leastWidth: size.default(711),
  frontStrip: z.number().min(0).max(limits.size).default(600),
});

export const floorWork = z.looseObject({
  mat: z.looseObject({ width: size, depth: size }).default({ width: 1200, depth: 750 }),
  gap: z.number().min(0).max(limits.size).default(300),
  /** mats wanted at once; null: children without a seat */
  wanted: z.number().int().min(0).max(1000).nullable().default(null),
});

/** How a finding was when it was left as it is; figures in the finding's own unit. */
const leftWas = z.looseObject({
  message: text.default(''),
  severity: z.enum(['must', 'should', 'note']),
  measured: z.number().nullable().default(null),
  needed: z.number().nullable().default(null),
});
export const left = z.looseObject({
  key: text,
  reason: text.default(''),
  by: text.default(''),
  at: text.default(''),
  /** absent: it is left however it becomes */
  was: leftWas.optional(),
});
export const note = z.looseObject({
  id,
  on: id.nullable().default(null),
  x: coordinate.default(0),
  y: coordinate.default(0),
  text,
  by: text.default(''),
  done: z.boolean().default(false),
});
const asked = z.record(z.string().max(64), z.enum(['deduct', 'count'])).default({});
const options = z.record(z.string().max(64), z.record(z.string().max(64), z.unknown())).default({});

export const classroom = z.looseObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  name: text,
  display: display.prefault({}),
  children: children.prefault({}),
  adults: adults.default([]),
  enrolment: z.array(enrolment).max(limits.list).default([]),
  ruleSet: z.string().max(64).default('own'),
  exitRules: z.enum(['us-ibc', 'england-adb']).nullable().default(null),
  sprinklered: z.boolean().default(false),
  service: z.string().max(64).nullable().default(null),
  /** answers where a rule set does not say */
  asked,
  /** rule id -> its own options */
  options,
  access: access.prefault({}),
  floorWork: floorWork.prefault({}),
  room,
  materials: z.array(material).max(limits.materials).superRefine(uniqueIds('material')).default([]),
  arrangements: z.array(arrangement).min(1).max(limits.arrangements).superRefine(uniqueIds('arrangement')),
  moveDay: z.unknown().default(null),
  current: id.nullable().default(null),
  left: z.array(left).max(limits.list).default([]),
  notes: z.array(note).max(limits.list).superRefine(uniqueIds('remark')).default([]),
});
