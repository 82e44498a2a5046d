import * as Y from 'yjs';
import { toProblem } from '../schema/readFile.ts';
import { idOf, inOrder, isAbsent, plainOf } from './decode.ts';
import { type ByIdShape, type EntryShape, type FieldsShape, isMark, type ListShape, type Shape, shapeOf, toFileKey } from './layout.ts';
import { freezeDeep, isPlainObject, isReserved, type Plain, sameJson, sayFound, UnfitValue } from './plain.ts';
import { type Memory, sameFields, sameList } from './remember.ts';
import type { NeedsRepair } from './types.ts';

/** A part as read: its value, and what in it did not parse. */
export interface Found<T> {
  readonly value: T;
  readonly problems: readonly NeedsRepair[];
}
const none: readonly NeedsRepair[] = Object.freeze([]);
export const noProblems = none;

/** The things of a list, in the order of the file. What does not parse is left out and told. */
export function readById(memory: Memory, list: Y.Map<unknown>, shape: ByIdShape, path: string): Found<Plain[]> {
  return memory.of<Found<Plain[]>>(list, (before) => {
    const values: Plain[] = [];
    const problems: NeedsRepair[] = [];
    for (const [key, raw] of inOrder(list)) {
      const at = `${path}.${key}`;
      if (isReserved(key)) problems.push({ path: at, found: `the reserved id "${key}"`, expected: 'another id' });
      else if (!(raw instanceof Y.Map)) problems.push({ path: at, found: sayFound(raw), expected: 'a thing with fields' });
      else {
        const found = readEntry(memory, raw, shape.entry, at, { [shape.idKey]: idOf(key, raw, shape.mayRepeat) });
        if (found.value) values.push(found.value);
        problems.push(...found.problems);
      }
    }
    return found(before, values, problems);
  });
}

/** The entries of an ordered list. */
export function readList(memory: Memory, list: Y.Array<unknown>, shape: ListShape, path: string): Found<Plain[]> {
  return memory.of<Found<Plain[]>>(list, (before) => {
    const values: Plain[] = [];
    const problems: NeedsRepair[] = [];
    let index = 0;
    for (const raw of list) {
      const at = `${path}[${index++}]`;
      if (!(raw instanceof Y.Map)) problems.push({ path: at, found: sayFound(raw), expected: 'a thing with fields' });
      else {
        const found = readEntry(memory, raw, shape.entry, at, {});
        if (found.value) values.push(found.value);
        problems.push(...found.problems);
      }
    }
    return found(before, values, problems);
  });
}

function found(before: Found<Plain[]> | undefined, values: Plain[], problems: NeedsRepair[]): Found<Plain[]> {
  const value = sameList(before?.value, values);
  if (before && value === before.value && problems.length === 0 && before.problems.length === 0) return before;
  return { value, problems: problems.length === 0 ? none : Object.freeze(problems) };
}

/** One thing: its own fields judged by the schema as a whole, the lists in it entry by entry. Null: set aside. */
function readEntry(memory: Memory, map: Y.Map<unknown>, shape: EntryShape, path: string, identity: Plain): Found<Plain | null> {
  return memory.of<Found<Plain | null>>(map, (before) => {
    const split = splitFields(memory, map, shape, path, 'whole');
    if (split.unfit) return { value: null, problems: split.problems };
    const file = { ...identity, ...split.own, ...identity };
    const parsed = shape.own.safeParse(file);
    if (!parsed.success) return { value: null, problems: parsed.error.issues.map((issue) => under(path, toProblem(issue, file))) };
    const own = freezeFields(before?.value ?? undefined, parsed.data as Plain);
    return { value: sameFields(before?.value ?? undefined, { ...own, ...split.lists }), problems: split.problems };
  });
}

/**
 * A part whose fields stand for themselves, such as the class's settings: a field that does not parse
 * falls back to what a file without it would say, and is told.
 */
export function readSettings(memory: Memory, map: Y.Map<unknown>, shape: EntryShape, path: string): Found<Plain> {
  return memory.of<Found<Plain>>(map, (before) => {
    const split = splitFields(memory, map, shape, path, 'by field');
    const problems = [...split.problems];
    const file = structuredCopy(split.own);
    let parsed = shape.own.safeParse(file);
    // Each round takes out the fields that did not parse; what is then missing is taken out one level up.
    for (let round = 0; !parsed.success && round < 12; round++) {
      for (const issue of parsed.error.issues) {
        if (round === 0) problems.push(under(path, toProblem(issue, file)));
        takeOut(file, issue.path);
      }
      parsed = shape.own.safeParse(file);
    }
    if (!parsed.success) parsed = shape.own.safeParse({});
    const own = freezeFields(before?.value, (parsed.data ?? {}) as Plain);
    return { value: sameFields(before?.value, { ...own, ...split.lists }), problems: problems.length === 0 ? none : problems };
  });
}

interface Split {
  readonly own: Plain;
  readonly lists: Plain;
  readonly problems: readonly NeedsRepair[];
  /** A field is one that no file may hold. */
  readonly unfit: boolean;
}

/**
 * Sorts a thing's fields into its own and the lists of things in it.
 * @param how whole: the first unfit field ends it; by field: it is left out and the others stand.
 */
function splitFields(memory: Memory, map: Y.Map<unknown>, shape: FieldsShape, path: string, how: 'whole' | 'by field'): Split {
  const own: Plain = {};
  const lists: Plain = {};
  const problems: NeedsRepair[] = [];
  let unfit = false;
  const aside = ({ path: at, found, expected }: UnfitValue): void => {
    unfit = true;
    problems.push({ path: at, found, expected });
  };
  for (const [key, field] of shape.fields) if (field.as === 'byId' && !field.mayBeAbsent) lists[key] = emptyList;
  for (const [docKey, raw] of map.entries()) {
    if (isMark(docKey)) continue;
    const key = toFileKey(docKey);
    const at = `${path}.${key}`;
    const field = shapeOf(shape, key);
    if (isReserved(key)) aside(new UnfitValue(at, `the reserved key "${key}"`, 'another key'));
    else if (field.as === 'byId' && raw instanceof Y.Map) {
      if (field.mayBeAbsent && isAbsent(raw)) continue;
      const inner = readById(memory, raw, field, at);
      lists[key] = inner.value;
      problems.push(...inner.problems);
    } else if (field.as === 'list' && raw instanceof Y.Array) {
      const inner = readList(memory, raw, field, at);
      lists[key] = inner.value;
      problems.push(...inner.problems);
    } else if (isEntryShape(field) && raw instanceof Y.Map) {
      const inner = readSettings(memory, raw, field, at);
      lists[key] = inner.value;
      problems.push(...inner.problems);
    } else if (field.as === 'byId' || field.as === 'list' || isEntryShape(field)) {
      problems.push({ path: at, found: sayFound(raw), expected: isEntryShape(field) ? 'fields' : 'a list of things' });
    } else {
      try {
        own[key] = plainOf(raw, field, at, how === 'by field' ? aside : undefined);
      } catch (error) {
        if (!(error instanceof UnfitValue)) throw error;
        aside(error);
      }
    }
  }
  return { own, lists, problems: problems.length === 0 ? none : problems, unfit };
}

const isEntryShape = (field: Shape): field is EntryShape => field.as === 'fields' && 'own' in field;

/** Typed as its lists are; frozen, since all share it. */
const emptyList: Plain[] = Object.freeze([]) as unknown as Plain[];

/** Fields that say the same as before keep their identity. */
function freezeFields(before: Plain | undefined, now: Plain): Plain {
  const own: Plain = {};
  for (const [key, value] of Object.entries(now)) {
    const old = before?.[key];
    own[key] = typeof value === 'object' && value !== null && sameJson(old, value) ? old : freezeDeep(value);
  }
  return own;
}

function takeOut(file: Plain, path: readonly PropertyKey[]): void {
  // An entry of a list without ids cannot be taken out alone: the others would change their places.
  const upTo = path.findIndex((key) => typeof key === 'number');
  const keys = (upTo === -1 ? path : path.slice(0, upTo)).map(String);
  for (let depth = keys.length; depth > 0; depth--) {
    let holder: unknown = file;
    for (const key of keys.slice(0, depth - 1)) holder = isPlainObject(holder) ? holder[key] : undefined;
    const last = keys[depth - 1];
    if (last === undefined || !isPlainObject(holder) || !Object.hasOwn(holder, last)) continue;
    delete holder[last];
    return;
  }
}

const structuredCopy = (own: Plain): Plain => JSON.parse(JSON.stringify(own)) as Plain;

function under(path: string, problem: NeedsRepair): NeedsRepair {
  if (problem.path === '(file)') return { ...problem, path };
  return { ...problem, path: problem.path.startsWith('[') ? `${path}${problem.path}` : `${path}.${problem.path}` };
}
