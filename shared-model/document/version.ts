import * as Y from 'yjs';
import { cleanJson, isReserved } from './plain.ts';

/** What lay under a key of the document, as data: a plain value, or a thing with its keys. Arrays in it are left out. */
export type Version = { readonly value: unknown } | { readonly map: { readonly [key: string]: Version } };

/**
 * What an item holds; of one that this transaction deleted, what it held before (null: only what is there now).
 * @returns null for what is no part of a version: a list, or an item that was deleted earlier.
 */
export function versionOf(item: Y.Item, transaction: Y.Transaction | null): Version | null {
  const content = item.content;
  if (content instanceof Y.ContentType) {
    if (!(content.type instanceof Y.Map)) return null;
    const map: Record<string, Version> = {};
    for (const [docKey, inner] of content.type._map) {
      if (isReserved(docKey) || !wasThere(inner, transaction)) continue;
      const version = versionOf(inner, transaction);
      if (version) map[docKey] = version;
    }
    return { map };
  }
  const [value] = content.getContent();
  return { value };
}

/** There now, or taken away by this transaction only. */
export const wasThere = (item: Y.Item, transaction: Y.Transaction | null): boolean =>
  !item.deleted || (transaction !== null && Y.isDeleted(transaction.deleteSet, item.id));

/** Writes versions into a thing, field by field, so that what they do not name stays. Runs inside a transaction. */
export function writeVersions(target: Y.Map<unknown>, versions: Readonly<Record<string, Version>>): void {
  for (const [docKey, version] of Object.entries(versions)) {
    if (!('map' in version)) {
      if (version.value === undefined) target.delete(docKey);
      else target.set(docKey, cleanJson(version.value, docKey));
      continue;
    }
    const there = target.get(docKey);
    if (there instanceof Y.Map) writeVersions(there, version.map);
    else {
      const made = new Y.Map<unknown>();
      target.set(docKey, made);
      writeVersions(made, version.map);
    }
  }
}
