import type * as Y from 'yjs';
import { type Overwritten, type OverwrittenField, standingAt } from '#model/document/overwritten.ts';
import { sameJson } from '#model/document/plain.ts';
import { type Keep, keptList } from './keptList.ts';
import type { Session } from './types.ts';

/** A change of this person that somebody else overwrote without having seen it; it waits for a word. */
export interface Conflict {
  readonly key: string;
  readonly path: readonly string[];
  readonly fields: Readonly<Record<string, OverwrittenField>>;
  /** Initials of who wrote what stands; "": not known (yet). */
  readonly by: string;
  /** The Yjs client that wrote it. */
  readonly client: number | null;
}

export interface Conflicts {
  list(): readonly Conflict[];
  settle(keys: readonly string[]): void;
  subscribe(listener: () => void): () => void;
}

const kept = new WeakMap<Y.Doc, Conflicts>();
const NONE: readonly Conflict[] = [];
const nothing: Conflicts = { list: () => NONE, settle: () => undefined, subscribe: () => () => undefined };

/** Those of an opened classroom. */
export const conflictsOf = (session: Session): Conflicts => kept.get(session.document.doc) ?? nothing;

/** Kept on this device until each is settled: what was overwritten is nowhere else any more. */
export function keepConflicts(
  id: string,
  doc: Y.Doc,
  storage: Keep,
): Conflicts & {
  add(found: readonly Overwritten[], initialsOf: (client: number) => string): void;
  /** Somebody came who may have written some of it. */
  name(initialsOf: (client: number) => string): void;
  /** They went on: what waits says what stands now, not the first of their steps. */
  follow(isMine: (client: number) => boolean, initialsOf: (client: number) => string): void;
} {
  const all = keptList(`lowshelf.conflicts.${id}`, storage, (one) => (isConflict(one) ? one : null));
  doc.on('destroy', all.close);
  const made = {
    list: all.list,
    settle: (keys: readonly string[]) => all.change((list) => list.filter((one) => !keys.includes(one.key))),
    subscribe: all.subscribe,
    add: (found: readonly Overwritten[], initialsOf: (client: number) => string) => {
      if (found.length === 0) return;
      all.change((list) => {
        const next = new Map(list.map((one) => [one.key, one]));
        // A thing that was taken away is a conflict by itself; fields of one thing are one.
        for (const { path, fields, by: client } of found.flatMap(apart)) {
          const at = keyOf(path, fields);
          const by = client === null ? '' : initialsOf(client);
          next.set(at, { key: at, path, fields: { ...next.get(at)?.fields, ...fields }, by, client });
        }
        return [...next.values()];
      });
    },
    name: (initialsOf: (client: number) => string) => {
      const isToName = (one: Conflict): boolean => one.by === '' && one.client !== null && initialsOf(one.client) !== '';
      if (!all.list().some(isToName)) return;
      all.change((list) => list.map((one) => (isToName(one) ? { ...one, by: initialsOf(one.client ?? 0) } : one)));
    },
    follow: (isMine: (client: number) => boolean, initialsOf: (client: number) => string) => {
      const now = (one: Conflict): Conflict | null => asItStands(one, doc, isMine, initialsOf);
      if (all.list().some((one) => now(one) !== one)) all.change((list) => list.flatMap((one) => now(one) ?? []));
    },
  };
  kept.set(doc, made);
  return made;
}

/**
 * With what they have written since; what I wrote since stays out of it, and what they took away is told by itself.
 * @returns the same when nothing is other; null: they wrote what I had, so nothing is left to decide
 */
function asItStands(
  conflict: Conflict,
  doc: Y.Doc,
  isMine: (client: number) => boolean,
  initialsOf: (client: number) => string,
): Conflict | null {
  let { client } = conflict;
  let isOther = false;
  const fields = Object.entries(conflict.fields).flatMap(([key, field]): [string, OverwrittenField][] => {
    const now = standingAt(doc, conflict.path, key);
    if (!now?.version || isMine(now.by) || sameJson(now.version, field.theirs)) return [[key, field]];
    isOther = true;
    client = now.by;
    return sameJson(now.version, field.mine) ? [] : [[key, { ...field, theirs: now.version }]];
  });
  if (!isOther) return conflict;
  if (fields.length === 0) return null;
  const by = client === conflict.client ? conflict.by : initialsOf(client ?? 0);
  return { ...conflict, fields: Object.fromEntries(fields), client, by };
}

/** Whether what was written here was a whole thing, such as a tray's place from the table. */
export const isWhole = ({ mine }: OverwrittenField): boolean => 'map' in mine;

/** Whole things each by themselves, beside the plain fields of the thing they lie in. */
function apart({ path, fields, by }: Overwritten): Overwritten[] {
  const entries = Object.entries(fields);
  const plain = entries.filter(([, field]) => !isWhole(field));
  const whole = entries.filter(([, field]) => isWhole(field)).map((entry) => ({ path, by, fields: Object.fromEntries([entry]) }));
  return plain.length === 0 ? whole : [{ path, by, fields: Object.fromEntries(plain) }, ...whole];
}

function keyOf(path: readonly string[], fields: Conflict['fields']): string {
  const [first] = Object.entries(fields);
  return [...path, ...(first && isWhole(first[1]) ? [first[0]] : [])].join('/');
}

function isConflict(value: unknown): value is Conflict {
  if (typeof value !== 'object' || value === null) return false;
  const { key, path, fields, by, client } = value as Record<string, unknown>;
  return (
    typeof key === 'string' &&
    typeof by === 'string' &&
    (client === null || typeof client === 'number') &&
    Array.isArray(path) &&
    path.every((part) => typeof part === 'string') &&
    typeof fields === 'object' &&
    fields !== null &&
    Object.values(fields).every((field) => isVersion((field as Record<string, unknown> | null)?.mine))
  );
}

const isVersion = (value: unknown): boolean => typeof value === 'object' && value !== null && ('value' in value || 'map' in value);
