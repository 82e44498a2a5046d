import * as Y from 'yjs';
import { isMark, toFileKey } from './layout.ts';
import { isPlainObject, isReserved, type Plain } from './plain.ts';

/** Deep enough for any entry, bounded for what a hostile peer may send. */
const DEEPEST = 12;

/** The thing that a problem's path leads to (the innermost one with an id), as plain JSON; null when it cannot be followed. */
export function rawOf(doc: Y.Doc, path: string): unknown {
  const keys = path.split(/[.[\]]/).filter((key) => key !== '');
  const [root, ...rest] = keys;
  if (root === undefined || !doc.share.has(root)) return null;
  let here: unknown = root === 'corners' ? doc.getArray(root) : doc.getMap(root);
  // The root and the thing's own id lead to the thing; what lies deeper is told with it.
  for (const key of rest.slice(0, depthOf(rest))) {
    if (here instanceof Y.Map) here = here.get(key);
    else if (here instanceof Y.Array) here = here.get(Number(key));
    else return null;
  }
  return harmless(here, 0);
}

/** Lists lie under an arrangement and a piece, so a thing is at most root, id, list, id, list, id. */
function depthOf(rest: readonly string[]): number {
  const inner = ['pieces', 'placements', 'watch', 'walk', 'levels', 'groups'];
  let depth = 1;
  while (depth + 1 < rest.length && inner.includes(rest[depth] ?? '')) depth += 2;
  return Math.min(depth, rest.length);
}

/** Plain JSON of anything; a reserved key gets an underscore, what JSON cannot hold is named. */
function harmless(value: unknown, depth: number): unknown {
  if (depth > DEEPEST) return '…';
  if (value instanceof Y.Map) {
    const pairs = [...value.entries()].filter(([key]) => !isMark(key)).map(([key, entry]) => [toFileKey(key), entry] as const);
    return harmlessFields(pairs, depth);
  }
  if (value instanceof Y.Array || Array.isArray(value)) return [...value].map((entry) => harmless(entry, depth + 1));
  if (isPlainObject(value)) return harmlessFields(Object.entries(value), depth);
  if (typeof value === 'object' && value !== null) return `(${value.constructor.name})`;
  return typeof value === 'bigint' || value === undefined ? String(value) : value;
}

function harmlessFields(pairs: readonly (readonly [string, unknown])[], depth: number): Plain {
  const fields: Plain = {};
  for (const [key, entry] of pairs) fields[isReserved(key) ? `_${key}` : key] = harmless(entry, depth + 1);
  return fields;
}
