import * as Y from 'yjs';
import { openDocument } from './openDocument.ts';
import { thingAt } from './overwritten.ts';
import type { ClassroomDocument, NeedsRepair } from './types.ts';

/** What can be done about an entry that does not parse. */
export interface EntryMend {
  /** The thing, and the key of the field in it that does not parse; null: the thing as a whole does not. */
  readonly thing: readonly string[];
  readonly field: string | null;
  /** drop: without the field it reads; figure: with a figure in its place it reads; none: neither is known to help. */
  readonly by: 'drop' | 'figure' | 'none';
  /** What "take it out" takes out; null: nothing that is written, something that lacks. */
  readonly entry: { readonly path: readonly string[]; readonly key: string } | null;
}

/** Figures that are tried, to tell whether a field takes one: mm, then small counts. */
const TRIED = [1000, 1];

export interface Mender {
  mendOf(problem: NeedsRepair): EntryMend;
  /** Whether the thing would read with this figure in the field. */
  takes(problem: NeedsRepair, figure: number): boolean;
}

/** Tries mends on a copy of the document, so that only what helps is offered. */
export function createMender(doc: Y.Doc): Mender {
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
  const trial = openDocument(copy);
  const mends = new Map<string, EntryMend>();

  const helps = (problem: NeedsRepair, change: () => boolean): boolean => {
    const before = trial.needsRepair().length;
    if (!change()) return false;
    const after = trial.needsRepair();
    const isMended = after.length < before && !after.some(({ path }) => path === problem.path);
    trial.undo.takeBack();
    return isMended;
  };
  const withFigure = (problem: NeedsRepair, thing: readonly string[], field: string, figure: number): boolean =>
    helps(problem, () => trial.commands.setBack(thing, { [field]: { value: figure } }));

  const find = (problem: NeedsRepair): EntryMend => {
    const keys = keysOf(problem.path);
    const entry = entryOf(trial, keys);
    const { thing, field } = fieldOf(copy, keys);
    if (field === null || !thingAt(copy, thing)) return { thing, field, by: 'none', entry };
    // A whole entry that is no thing is taken out, not dropped.
    const isEntry = entry !== null && entry.key === field && entry.path.length === thing.length && keys[0] !== 'classroom';
    if (!isEntry && helps(problem, () => trial.commands.takeOut(thing, field))) return { thing, field, by: 'drop', entry };
    const takesFigure = !isEntry && TRIED.some((figure) => withFigure(problem, thing, field, figure));
    return { thing, field, by: takesFigure ? 'figure' : 'none', entry };
  };

  return {
    mendOf: (problem) => {
      const known = mends.get(problem.path) ?? find(problem);
      mends.set(problem.path, known);
      return known;
    },
    takes: (problem, figure) => {
      const { thing, field } = fieldOf(copy, keysOf(problem.path));
      return field !== null && withFigure(problem, thing, field, figure);
    },
  };
}

/** "corners[3].x" -> corners, [3], x */
const keysOf = (path: string): string[] =>
  path.split('.').flatMap((part) => {
    const [name = '', ...indices] = part.split('[');
    return [...(name === '' ? [] : [name]), ...indices.map((index) => `[${index}`)];
  });

/** Down as far as there are things; the next key is the field. */
function fieldOf(doc: Y.Doc, keys: readonly string[]): { thing: string[]; field: string | null } {
  const [root = ''] = keys;
  const thing = [root];
  for (const key of keys.slice(1)) {
    if (!thingAt(doc, [...thing, key])) return { thing, field: key };
    thing.push(key);
  }
  return { thing, field: null };
}

/** Lists lie under an arrangement, a piece and the children; what lies under a setting is taken out with its field. */
function entryOf({ doc }: ClassroomDocument, keys: readonly string[]): EntryMend['entry'] {
  const [root, first] = keys;
  if (root === undefined || first === undefined) return null;
  if (root === 'classroom' || root === 'moveDay') {
    const { thing, field } = fieldOf(doc, keys);
    const key = field ?? thing.at(-1);
    const path = field === null ? thing.slice(0, -1) : thing;
    return key === undefined || !thingAt(doc, path)?.has(key) ? null : { path, key };
  }
  const inner = ['pieces', 'placements', 'watch', 'levels'];
  let end = 2;
  while (end + 1 < keys.length && inner.includes(keys[end] ?? '')) end += 2;
  return { path: keys.slice(0, end - 1), key: keys[end - 1] ?? first };
}
