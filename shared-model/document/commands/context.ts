import * as Y from 'yjs';
import type { z } from 'zod';
import { toProblem } from '../../schema/readFile.ts';
import type { Classroom } from '../../schema/types.ts';
import { writeField } from '../encode.ts';
import { type FieldsShape, shapeOf } from '../layout.ts';
import { cleanJson, isReserved, type Plain, sayFound, UnfitValue } from '../plain.ts';
import { rootOf, type YMap } from '../roots.ts';

/** What every command works with. */
export interface Context {
  readonly doc: Y.Doc;
  /** The classroom before this step. */
  readonly read: () => Classroom;
  readonly newId: (kind: string) => string;
  readonly now: () => string;
  /** Runs as this person's own step: one transaction. */
  readonly step: <T>(work: () => T) => T;
}

type ObjectSchema = z.ZodObject<z.ZodRawShape>;

/** @returns undefined when the thing is gone. */
export function thing(list: unknown, id: string): YMap | undefined {
  const entry = list instanceof Y.Map ? list.get(id) : undefined;
  return entry instanceof Y.Map ? entry : undefined;
}

export const arrangementOf = (context: Context, id: string): YMap | undefined => thing(rootOf(context.doc, 'arrangements'), id);
export const pieceOf = (context: Context, arrangement: string, piece: string): YMap | undefined =>
  thing(arrangementOf(context, arrangement)?.get('pieces'), piece);

/**
 * A whole new thing, defaults filled in.
 * @throws UnfitValue when a value is out of what a classroom file takes: a fault of the caller, nothing is written.
 */
export function whole<S extends z.ZodType>(schema: S, value: unknown, what: string): z.output<S> & Plain {
  const parsed = schema.safeParse(cleanJson(value, what));
  if (parsed.success) return parsed.data as z.output<S> & Plain;
  throw unfit(parsed.error.issues[0], value, what);
}

/** Some fields of a thing, each judged by itself. An undefined value means "as a file without it". */
export function part(schema: ObjectSchema, set: object, what: string): Plain {
  const checked: Plain = {};
  for (const [key, value] of Object.entries(set)) {
    if (isReserved(key)) throw new UnfitValue(`${what}.${key}`, `the reserved key "${key}"`, 'another key');
    const field = Object.hasOwn(schema.shape, key) ? (schema.shape[key] as z.ZodType) : undefined;
    if (value === undefined || !field) {
      checked[key] = value === undefined ? undefined : cleanJson(value, `${what}.${key}`);
      continue;
    }
    const parsed = field.safeParse(cleanJson(value, `${what}.${key}`));
    if (!parsed.success) throw unfit(parsed.error.issues[0], value, `${what}.${key}`);
    checked[key] = parsed.data;
  }
  return checked;
}

function unfit(issue: z.core.$ZodIssue | undefined, value: unknown, what: string): UnfitValue {
  if (!issue) return new UnfitValue(what, sayFound(value), 'another value');
  const { path, found, expected } = toProblem(issue, value);
  return new UnfitValue(path === '(file)' ? what : `${what}.${path}`, path === '(file)' ? sayFound(value) : found, expected);
}

/** Writes fields of a thing that is there. */
export function setFields(target: YMap, shape: FieldsShape, set: Plain): void {
  for (const [key, value] of Object.entries(set)) writeField(target, key, shapeOf(shape, key), value);
}

/** Writes plain fields that belong together, all as soon as one differs: merged halves of two moves would be a third place. */
export function setTogether(target: YMap, set: Readonly<Record<string, unknown>>): void {
  const differs = Object.entries(set).some(([key, value]) => target.get(key) !== value);
  if (differs) for (const [key, value] of Object.entries(set)) target.set(key, value);
}

/** Takes a thing out of a list. False when it was gone. */
export function removeFrom(context: Context, list: YMap | undefined, id: string): boolean {
  if (!list || !thing(list, id)) return false;
  context.step(() => list.delete(id));
  return true;
}

/** The id that was asked for where it is free, else a new one: adding never overwrites. */
export function freeId(context: Context, list: YMap | undefined, asked: string | undefined, kind: string): string {
  return asked !== undefined && !list?.has(asked) ? asked : context.newId(kind);
}
