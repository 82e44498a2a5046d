import * as Y from 'yjs';
import { isMark } from './layout.ts';
import { sameJson } from './plain.ts';
import { type Version, versionOf, wasThere } from './version.ts';

/** One field that somebody here wrote and somebody elsewhere overwrote without having seen it. */
export interface OverwrittenField {
  readonly mine: Version;
  /** null: they took it away. */
  readonly theirs: Version | null;
}

/** What of one thing was overwritten by one merge. */
export interface Overwritten {
  /** Where the thing lies: root, then keys of the document down ("arrangements", "a1", "pieces", "s7"); an entry of a list goes by its id. */
  readonly path: readonly string[];
  readonly fields: Readonly<Record<string, OverwrittenField>>;
  /** Yjs client that wrote what stands now; null: it was taken away, by whom is not known. */
  readonly by: number | null;
}

export interface Whose {
  /** Written on this device, on this visit or an earlier one. */
  isMine(client: number): boolean;
  /** The server has what this client wrote up to that clock, so that others could have seen it. */
  isConfirmed(client: number, clock: number): boolean;
}

/**
 * Tells when a merge overwrites what was written on this device and its writer had not seen. Read from the document,
 * not from the clock: a Yjs item names the value it was written over (its origin), so who had seen the value here wrote
 * over it knowingly, which is no conflict. What is taken away names nothing; there only what the server had not yet
 * confirmed counts, since nobody else can have seen it.
 * @returns a function that stops it.
 */
export function watchOverwritten(doc: Y.Doc, whose: Whose, tell: (found: readonly Overwritten[]) => void): () => void {
  const look = (transaction: Y.Transaction): void => {
    if (transaction.local) return;
    const found = new Map<string, Overwritten>();
    for (const [type, keys] of transaction.changed as Map<Y.AbstractType<unknown>, Set<string | null>>) {
      if (!(type instanceof Y.Map) || type._item?.deleted) continue;
      for (const key of keys) {
        if (key === null || isMark(key)) continue;
        const one = overwrittenAt(type._map.get(key), transaction, whose);
        const path = one && pathOf(type as Y.AbstractType<unknown>, doc);
        if (!one || !path) continue;
        const at = path.join('/');
        const known = found.get(at);
        found.set(at, { path, by: one.by ?? known?.by ?? null, fields: { ...known?.fields, [key]: one.field } });
      }
    }
    if (found.size > 0) tell([...found.values()]);
  };
  doc.on('afterTransaction', look);
  return () => doc.off('afterTransaction', look);
}

function overwrittenAt(
  now: Y.Item | undefined,
  transaction: Y.Transaction,
  whose: Whose,
): { readonly field: OverwrittenField; readonly by: number | null } | null {
  if (!now) return null;
  const isNew = ({ id }: Y.Item): boolean => id.clock >= (transaction.beforeState.get(id.client) ?? 0);
  if (!isNew(now)) {
    if (!now.deleted || !Y.isDeleted(transaction.deleteSet, now.id) || !hasUnseen(now, transaction, whose)) return null;
    const mine = versionOf(now, transaction);
    return mine && { field: { mine, theirs: null }, by: null };
  }
  // Written on this device in another tab: it is the same person.
  if (now.deleted || whose.isMine(now.id.client)) return null;
  let prior: Y.Item | null = now.left;
  while (prior && isNew(prior)) prior = prior.left;
  if (!prior || !whose.isMine(prior.id.client) || !wasThere(prior, transaction)) return null;
  if (hadSeen(now, prior, isNew)) return null;
  const mine = versionOf(prior, transaction);
  const theirs = versionOf(now, transaction);
  if (!mine || !theirs || sameJson(mine, theirs)) return null;
  return { field: { mine, theirs }, by: now.id.client };
}

/** Whether the one who wrote `now` had `prior` before them: it was written over it, or over what was. */
function hadSeen(now: Y.Item, prior: Y.Item, isNew: (item: Y.Item) => boolean): boolean {
  let over = now.origin;
  for (let left = now.left; over && left; left = left.left) {
    if (!holds(left, over)) continue;
    if (!isNew(left)) break;
    over = left.origin;
  }
  return over !== null && holds(prior, over);
}

const holds = (item: Y.Item, { client, clock }: Y.ID): boolean =>
  item.id.client === client && clock >= item.id.clock && clock < item.id.clock + item.length;

/** Something in it was written here and is on no other device yet. */
function hasUnseen(item: Y.Item, transaction: Y.Transaction, whose: Whose): boolean {
  const { client, clock } = item.id;
  if (whose.isMine(client) && !whose.isConfirmed(client, clock)) return true;
  if (!(item.content instanceof Y.ContentType)) return false;
  const { type } = item.content;
  if (!(type instanceof Y.Map)) return false;
  return [...type._map.values()].some((inner) => wasThere(inner, transaction) && hasUnseen(inner, transaction, whose));
}

/** @returns null when it lies in no root of this document. */
function pathOf(type: Y.AbstractType<unknown>, doc: Y.Doc): string[] | null {
  const path: string[] = [];
  let here = type;
  while (here._item) {
    const { parent, parentSub } = here._item;
    if (!(parent instanceof Y.AbstractType)) return null;
    const name = parentSub ?? (here instanceof Y.Map ? here.get('id') : null);
    if (typeof name !== 'string') return null;
    path.unshift(name);
    here = parent;
  }
  const root = [...doc.share.entries()].find(([, shared]) => shared === here)?.[0];
  return root === undefined ? null : [root, ...path];
}

/** By its id, or by its place as "[3]". */
function entryOf(list: Y.Array<unknown>, key: string): unknown {
  const place = /^\[(\d+)\]$/.exec(key)?.[1];
  if (place !== undefined) return Number(place) < list.length ? list.get(Number(place)) : undefined;
  return [...list].find((entry) => entry instanceof Y.Map && entry.get('id') === key);
}

/** The thing that a path leads to; undefined when it is gone. */
export function thingAt(doc: Y.Doc, path: readonly string[]): Y.Map<unknown> | undefined {
  const [root, ...keys] = path;
  if (root === undefined || !doc.share.has(root)) return undefined;
  let here: unknown = root === 'corners' ? doc.getArray(root) : doc.getMap(root);
  for (const key of keys) {
    if (here instanceof Y.Map) here = here.get(key);
    else if (here instanceof Y.Array) here = entryOf(here, key);
    else return undefined;
  }
  return here instanceof Y.Map ? here : undefined;
}

/**
 * What stands under a key of a thing now, and the Yjs client that wrote it.
 * @returns null when the thing is gone or never had the key; `version` null: taken away.
 */
export function standingAt(
  doc: Y.Doc,
  path: readonly string[],
  key: string,
): { readonly version: Version | null; readonly by: number } | null {
  const item = thingAt(doc, path)?._map.get(key);
  return item ? { version: item.deleted ? null : versionOf(item, null), by: item.id.client } : null;
}
