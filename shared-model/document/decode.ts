import * as Y from 'yjs';
import { absentKey, idFieldKey, isMark, orderKey, type Shape, shapeOf, toFileKey } from './layout.ts';
import { cleanJson, isReserved, type Plain, UnfitValue } from './plain.ts';

/**
 * A part of the document as the file has it, unjudged. Entry by entry, never through toJSON:
 * a key such as "__proto__" must not reach an object.
 * @param aside called with a field that no file may hold, which is then left out; absent: it is thrown.
 * @throws UnfitValue for reserved keys and for what JSON cannot hold.
 */
export function plainOf(value: unknown, shape: Shape, path = '', aside?: Aside): unknown {
  if (value instanceof Y.Map) return shape.as === 'byId' ? plainById(value, shape, path) : plainFields(value, shape, path, aside);
  if (value instanceof Y.Array) {
    const entry: Shape = shape.as === 'list' ? shape.entry : { as: 'value' };
    return [...value].map((item, index) => plainOf(item, entry, `${path}[${index}]`));
  }
  if (value instanceof Y.AbstractType) throw new UnfitValue(path, 'rich text', 'a JSON value');
  return cleanJson(value, path);
}

export type Aside = (unfit: UnfitValue) => void;

function plainFields(map: Y.Map<unknown>, shape: Shape, path: string, aside?: Aside): Plain {
  const fields: Plain = {};
  for (const [docKey, value] of map.entries()) {
    if (isMark(docKey)) continue;
    const key = toFileKey(docKey);
    const field: Shape = shape.as === 'fields' ? shapeOf(shape, key) : { as: 'value' };
    if (field.as === 'byId' && isAbsent(value)) continue;
    const at = path === '' ? key : `${path}.${key}`;
    try {
      if (isReserved(key)) throw new UnfitValue(at, `the reserved key "${key}"`, 'another key');
      fields[key] = plainOf(value, field, at, aside);
    } catch (error) {
      if (!aside || !(error instanceof UnfitValue)) throw error;
      aside(error);
    }
  }
  return fields;
}

function plainById(map: Y.Map<unknown>, shape: Extract<Shape, { as: 'byId' }>, path: string): Plain[] {
  return inOrder(map).map(([key, value]) => {
    if (isReserved(key)) throw new UnfitValue(`${path}.${key}`, `the reserved id "${key}"`, 'another id');
    if (!(value instanceof Y.Map)) throw new UnfitValue(`${path}.${key}`, typeof value, 'a thing with fields');
    return { [shape.idKey]: idOf(key, value, shape.mayRepeat), ...plainFields(value, shape.entry, `${path}.${key}`) };
  });
}

/** Whether a list that may be absent is. */
export const isAbsent = (list: unknown): boolean => list instanceof Y.Map && list.size <= 1 && list.get(absentKey) === true;

/** The id a thing has in the file: its key, unless two things there share one. */
export function idOf(key: string, entry: Y.Map<unknown>, mayRepeat: boolean): string {
  const kept = mayRepeat ? entry.get(idFieldKey) : undefined;
  return typeof kept === 'string' ? kept : key;
}

/** The entries of a list of things in the order of the file; ties (two people who add at once) by id, the same for everybody. */
export function inOrder(map: Y.Map<unknown>): [string, unknown][] {
  const keyed: { key: string; value: unknown; order: number }[] = [];
  for (const [key, value] of map.entries()) {
    if (isMark(key)) continue;
    const order = value instanceof Y.Map ? value.get(orderKey) : undefined;
    keyed.push({ key, value, order: typeof order === 'number' && !Number.isNaN(order) ? order : Infinity });
  }
  keyed.sort((a, b) => (a.order === b.order ? (a.key < b.key ? -1 : 1) : a.order - b.order));
  return keyed.map(({ key, value }) => [key, value]);
}
