import { classroom as classroomSchema } from '../schema/classroom.ts';
import type { Torn } from '../schema/readFile.ts';
import type { Classroom } from '../schema/types.ts';
import { createDocument } from './openDocument.ts';
import { isPlainObject, type Plain } from './plain.ts';

/** A thing of a file that cannot be read. */
export interface TornEntry {
  /** The list it stands in, as the file calls it: "openings", "pieces". */
  readonly list: string;
  readonly entry: Plain;
}

export interface TornClassroom {
  /** To be written into a document, which sets aside what cannot be read, keeps it and names it. Not to be judged as it is. */
  readonly classroom: Classroom;
  readonly entries: readonly TornEntry[];
}

/** Lists whose things a document holds each for itself. */
const lists = [
  ['room', 'openings'],
  ['room', 'fixtures'],
  ['materials'],
  ['arrangements', Number, 'pieces'],
  ['arrangements', Number, 'placements'],
] as const;

/** A thing that cannot be read may hide what is wrong with another. */
const MOST_ROUNDS = 4;

/** A file in which no more than single things cannot be read, with these things in it as they are. Null: more of it is wrong. */
export function withTornEntries({ file, issues }: Torn): TornClassroom | null {
  const rest = copyOf(file);
  const entries: { readonly at: readonly PropertyKey[]; readonly entry: Plain }[] = [];
  let open = issues;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const torn = new Map<string, readonly PropertyKey[]>();
    for (const path of open) {
      const at = entryPath(path);
      if (!at) return null;
      torn.set(at.join('/'), at);
    }
    // From the end of each list, so that the places of the others stay what they are.
    for (const at of [...torn.values()].sort((p, q) => Number(q.at(-1)) - Number(p.at(-1)))) {
      const list = valueAt(rest, at.slice(0, -1)) as unknown[];
      const [entry] = list.splice(Number(at.at(-1)), 1);
      if (!isPlainObject(entry)) return null;
      entries.push({ at: at.slice(0, -1), entry });
    }
    const parsed = classroomSchema.safeParse(rest);
    if (parsed.success) return putBack(parsed.data, entries);
    open = parsed.error.issues.map((issue) => issue.path);
  }
  return null;
}

const idOf = ({ id, material }: Plain): unknown => id ?? material;

const copyOf = <T>(json: T): T => JSON.parse(JSON.stringify(json)) as T;

/** The path of the thing in which something is wrong. */
function entryPath(path: readonly PropertyKey[]): readonly PropertyKey[] | null {
  for (const list of lists) {
    const isIn = list.every((key, i) => (key === Number ? typeof path[i] === 'number' : path[i] === key));
    if (isIn && typeof path[list.length] === 'number') return path.slice(0, list.length + 1);
  }
  return null;
}

const valueAt = (file: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown>)[key], file);

/** Null where a document could not keep one of them, as without an id or with that of another. */
function putBack(
  classroom: Classroom,
  torn: readonly { readonly at: readonly PropertyKey[]; readonly entry: Plain }[],
): TornClassroom | null {
  const whole = copyOf(classroom);
  for (const { at, entry } of torn) {
    const list = valueAt(whole, at) as Plain[];
    if (list.some((other) => idOf(other) === idOf(entry))) return null;
    list.push(entry);
  }
  try {
    const document = createDocument(whole);
    const told = document.needsRepair().map(({ path }) => `.${path}.`);
    document.destroy();
    if (!torn.every(({ entry }) => told.some((path) => path.includes(`.${String(idOf(entry))}.`)))) return null;
  } catch {
    return null;
  }
  return { classroom: whole, entries: torn.map(({ at, entry }) => ({ list: String(at.at(-1)), entry })) };
}
