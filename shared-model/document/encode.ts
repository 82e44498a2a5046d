import * as Y from 'yjs';
import { plainOf } from './decode.ts';
import {
  absentKey,
  type ByIdShape,
  type FieldsShape,
  idFieldKey,
  isMark,
  type ListShape,
  orderKey,
  type Shape,
  shapeOf,
  toDocKey,
} from './layout.ts';
import { cleanJson, isPlainObject, isReserved, type Plain, sameJson, UnfitValue } from './plain.ts';
import type { YList, YMap } from './roots.ts';

/**
 * Writes what differs and nothing else, so that a write of a whole thing does not undo what others changed in it.
 * All of these run inside a transaction, on types that are part of a document.
 */
export function writeField(target: YMap, fileKey: string, shape: Shape, value: unknown): void {
  if (isReserved(fileKey)) throw new UnfitValue(fileKey, `the reserved key "${fileKey}"`, 'another key');
  const key = toDocKey(fileKey);
  if (value === undefined) {
    if (shape.as === 'byId' && shape.mayBeAbsent) writeAbsent(target, key);
    else if (target.has(key)) target.delete(key);
    return;
  }
  if (shape.as === 'byId' && Array.isArray(value)) writeById(mapAt(target, key), shape, value);
  else if (shape.as === 'list' && Array.isArray(value)) writeList(listAt(target, key), shape, value);
  else if (shape.as === 'fields' && isPlainObject(value)) writeFields(mapAt(target, key), shape, value, 'whole');
  else if (!holds(target, key, value)) target.set(key, cleanJson(value, fileKey));
}

function holds(target: YMap, key: string, value: unknown): boolean {
  return target.has(key) && sameJson(fitOrNothing(target.get(key), { as: 'value' }), value);
}

/** What lies there, or undefined when a peer put something there that no file may hold: then it is written anew. */
function fitOrNothing(there: unknown, shape: Shape): unknown {
  try {
    return plainOf(there, shape);
  } catch (error) {
    if (error instanceof UnfitValue) return undefined;
    throw error;
  }
}

/** @param how whole: fields that the value lacks are taken out; part: they stay. */
export function writeFields(target: YMap, shape: FieldsShape, value: Plain, how: 'whole' | 'part'): void {
  for (const [key, entry] of Object.entries(value)) writeField(target, key, shapeOf(shape, key), entry);
  for (const [key, field] of how === 'whole' ? shape.fields : [])
    if (!Object.hasOwn(value, key) && field.as === 'byId' && field.mayBeAbsent) writeField(target, key, field, undefined);
  if (how === 'part') return;
  const wanted = new Set(Object.keys(value).map(toDocKey));
  for (const key of [...target.keys()]) {
    if (isMark(key) || wanted.has(key)) continue;
    const field = shape.fields.get(key);
    if (!(field?.as === 'byId' && field.mayBeAbsent)) target.delete(key);
  }
}

/** Puts one thing into a list of things, after all that are there, or changes the one that is there. */
export function writeEntry(list: YMap, shape: ByIdShape, id: string, value: Plain): void {
  const key = freeKey(id, new Set(), shape.mayRepeat);
  const isNew = !(list.get(key) instanceof Y.Map);
  const target = mapAt(list, key);
  if (isNew) target.set(orderKey, lastOrder(list) + 1);
  if (key !== id) target.set(idFieldKey, id);
  writeFields(target, shape.entry, without(value, shape.idKey), 'whole');
  if (list.has(absentKey)) list.delete(absentKey);
}

/** Makes a list of things be this list: entries that are gone go, the others are changed where they differ. */
export function writeById(list: YMap, shape: ByIdShape, values: readonly unknown[]): void {
  const taken = new Set<string>();
  let order = 0;
  for (const value of values) {
    if (!isPlainObject(value)) throw new UnfitValue(shape.idKey, typeof value, 'an object');
    const id = String(value[shape.idKey]);
    const key = freeKey(id, taken, shape.mayRepeat);
    taken.add(key);
    const target = mapAt(list, key);
    const had = target.get(orderKey);
    order = typeof had === 'number' && had > order ? had : order + 1;
    if (had !== order) target.set(orderKey, order);
    writeFields(target, shape.entry, without(value, shape.idKey), 'whole');
    if (key !== id && target.get(idFieldKey) !== id) target.set(idFieldKey, id);
  }
  for (const key of [...list.keys()]) if (!taken.has(key)) list.delete(key);
}

/** Makes an ordered list be this list, touching only entries that are new, gone, changed or elsewhere. */
export function writeList(list: YList, shape: ListShape, values: readonly unknown[]): void {
  const wanted = values.map((value) => {
    if (!isPlainObject(value)) throw new UnfitValue('list', typeof value, 'an object');
    return value;
  });
  const keep = new Set(wanted.map(shape.identity));
  const seen = new Set<string>();
  for (let i = 0; i < list.length; ) {
    const identity = identityAt(list, i, shape);
    if (identity !== null && keep.has(identity) && !seen.has(identity)) {
      seen.add(identity);
      i++;
    } else list.delete(i, 1);
  }
  wanted.forEach((value, index) => {
    const identity = shape.identity(value);
    if (identityAt(list, index, shape) !== identity) {
      for (let later = index + 1; later < list.length; later++)
        if (identityAt(list, later, shape) === identity) {
          list.delete(later, 1);
          break;
        }
      list.insert(index, [new Y.Map()]);
    }
    writeFields(list.get(index) as YMap, shape.entry, value, 'whole');
  });
  if (list.length > wanted.length) list.delete(wanted.length, list.length - wanted.length);
}

function identityAt(list: YList, index: number, shape: ListShape): string | null {
  const entry = index < list.length ? list.get(index) : undefined;
  if (!(entry instanceof Y.Map)) return null;
  const fields = fitOrNothing(entry, shape.entry);
  return isPlainObject(fields) ? shape.identity(fields) : null;
}

function writeAbsent(target: YMap, key: string): void {
  // The empty map is made all the same: two people who both begin the list then write into one.
  const list = mapAt(target, key);
  for (const id of [...list.keys()]) if (id !== absentKey) list.delete(id);
  if (!list.has(absentKey)) list.set(absentKey, true);
}

function lastOrder(list: YMap): number {
  let last = 0;
  for (const entry of list.values()) {
    const order = entry instanceof Y.Map ? entry.get(orderKey) : undefined;
    if (typeof order === 'number' && order > last) last = order;
  }
  return last;
}

function freeKey(id: string, taken: ReadonlySet<string>, mayRepeat: boolean): string {
  if (!mayRepeat) {
    if (isReserved(id)) throw new UnfitValue(id, `the reserved id "${id}"`, 'another id');
    return id;
  }
  const first = isReserved(id) || id.startsWith('~') ? `#${id}` : id;
  let key = first;
  for (let again = 2; taken.has(key); again++) key = `${first}#${again}`;
  return key;
}

const without = (value: Plain, key: string): Plain => {
  const { [key]: _, ...rest } = value;
  return rest;
};

export function mapAt(target: YMap, key: string): YMap {
  const there = target.get(key);
  if (there instanceof Y.Map) return there;
  const made: YMap = new Y.Map();
  target.set(key, made);
  return made;
}

function listAt(target: YMap, key: string): YList {
  const there = target.get(key);
  if (there instanceof Y.Array) return there;
  const made: YList = new Y.Array();
  target.set(key, made);
  return made;
}
