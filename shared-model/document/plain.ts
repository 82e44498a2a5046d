import { limits } from '../schema/limits.ts';

/** Names that would reach an object's prototype; no entry and no field may carry one. */
const reserved: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
export const isReserved = (key: string): boolean => reserved.has(key);

/** Deeper than any classroom goes: a bound for what a broken or hostile peer may send. */
const DEEPEST = 32;

/** A value that the document does not take. */
export class UnfitValue extends Error {
  constructor(
    readonly path: string,
    readonly found: string,
    readonly expected: string,
  ) {
    super(`${path}: found ${found}, expected ${expected}`);
    this.name = 'UnfitValue';
  }
}

export type Plain = Record<string, unknown>;

export function isPlainObject(value: unknown): value is Plain {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/**
 * A copy of a JSON value that shares nothing with it. Keys whose value is undefined are left out, as JSON does.
 * @throws UnfitValue for a reserved key, and for what JSON cannot hold.
 */
export function cleanJson(value: unknown, path: string, depth = 0): unknown {
  if (depth > DEEPEST) throw new UnfitValue(path, `more than ${DEEPEST} levels`, 'a flatter value');
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new UnfitValue(path, String(value), 'a finite number');
    // JSON knows no negative zero; keeping it would make an exported file differ from its import.
    return value === 0 ? 0 : value;
  }
  if (Array.isArray(value)) return value.map((entry, index) => cleanJson(entry, `${path}[${index}]`, depth + 1));
  if (!isPlainObject(value)) throw new UnfitValue(path, typeof value === 'object' ? 'binary data' : `a ${typeof value}`, 'a JSON value');
  const copy: Plain = {};
  for (const [key, entry] of Object.entries(value)) {
    if (isReserved(key)) throw new UnfitValue(`${path}.${key}`, `the reserved key "${key}"`, 'another key');
    if (entry !== undefined) copy[key] = cleanJson(entry, `${path}.${key}`, depth + 1);
  }
  return copy;
}

/** Two JSON values say the same; the order of keys does not count. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b) || a === b) return true;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((entry, index) => sameJson(entry, b[index]));
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && sameJson(a[key], b[key]));
}

/** Freezes a JSON value all the way down. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  for (const entry of Object.values(value)) freezeDeep(entry);
  return Object.freeze(value);
}

/** What was found, short enough for a message. */
export function sayFound(value: unknown): string {
  if (value === undefined) return 'nothing';
  let text: string;
  try {
    text = JSON.stringify(value) ?? String(value);
  } catch {
    text = `a ${typeof value}`;
  }
  return text.length > Math.min(80, limits.text) ? `${text.slice(0, 77)}…` : text;
}
