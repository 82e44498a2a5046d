import type { Arrangement, Classroom } from '#model/schema/types.ts';

/**
 * What is new between two classrooms that share their unchanged parts. A drag of one shelf then
 * sends one piece to the worker, not the whole class.
 */
export interface ClassroomChange {
  readonly set: Readonly<Record<string, unknown>>;
  readonly removed: readonly string[];
  /** Lists of things with ids: their order, and those that are new. */
  readonly lists: Readonly<Record<string, ListChange>>;
  readonly arrangements: {
    readonly order: readonly string[];
    readonly whole: readonly Arrangement[];
    readonly inside: readonly ArrangementChange[];
  } | null;
}
interface ListChange {
  readonly order: readonly string[];
  readonly changed: readonly Keyed[];
}
interface ArrangementChange {
  readonly id: string;
  readonly set: Readonly<Record<string, unknown>>;
  readonly removed: readonly string[];
  readonly lists: Readonly<Record<string, ListChange>>;
}
interface Keyed {
  readonly id: string;
}
type Fields = Readonly<Record<string, unknown>>;

/** By identity: two equal copies count as a change. */
export function changeBetween(before: Classroom, after: Classroom): ClassroomChange {
  const { arrangements: beforeList, ...beforeRest } = before;
  const { arrangements: afterList, ...afterRest } = after;
  const fields = fieldsBetween(beforeRest, afterRest, ['materials']);
  if (beforeList === afterList) return { ...fields, arrangements: null };
  const known = new Map(beforeList.map((arrangement) => [arrangement.id, arrangement]));
  const whole: Arrangement[] = [];
  const inside: ArrangementChange[] = [];
  for (const arrangement of afterList) {
    const old = known.get(arrangement.id);
    if (!old) whole.push(arrangement);
    else if (old !== arrangement) inside.push({ id: arrangement.id, ...fieldsBetween(old, arrangement, ['pieces']) });
  }
  return { ...fields, arrangements: { order: afterList.map((a) => a.id), whole, inside } };
}

/** The classroom after the change; parts that did not change keep their identity. */
export function withChange(before: Classroom, change: ClassroomChange): Classroom {
  const base = withFields(before, change);
  if (!change.arrangements) return base as Classroom;
  const known = new Map(before.arrangements.map((arrangement) => [arrangement.id, arrangement]));
  for (const arrangement of change.arrangements.whole) known.set(arrangement.id, arrangement);
  for (const part of change.arrangements.inside) {
    const old = known.get(part.id);
    if (old) known.set(part.id, withFields(old, part) as Arrangement);
  }
  return { ...base, arrangements: inOrder(change.arrangements.order, known) } as Classroom;
}

function fieldsBetween(before: Fields, after: Fields, listKeys: readonly string[]) {
  const set: Record<string, unknown> = {};
  const lists: Record<string, ListChange> = {};
  for (const [key, value] of Object.entries(after)) {
    const old = before[key];
    if (old === value) continue;
    if (listKeys.includes(key) && Array.isArray(old) && Array.isArray(value)) lists[key] = listBetween(old, value);
    else set[key] = value;
  }
  return { set, lists, removed: Object.keys(before).filter((key) => !(key in after)) };
}

function listBetween(before: readonly Keyed[], after: readonly Keyed[]): ListChange {
  const known = new Map(before.map((entry) => [entry.id, entry]));
  return { order: after.map((entry) => entry.id), changed: after.filter((entry) => known.get(entry.id) !== entry) };
}

function withFields(before: Fields, change: Pick<ArrangementChange, 'set' | 'removed' | 'lists'>): Fields {
  const after: Record<string, unknown> = { ...before, ...change.set };
  for (const key of change.removed) delete after[key];
  for (const [key, list] of Object.entries(change.lists)) {
    const known = new Map(((before[key] ?? []) as readonly Keyed[]).map((entry) => [entry.id, entry]));
    for (const entry of list.changed) known.set(entry.id, entry);
    after[key] = inOrder(list.order, known);
  }
  return after;
}

function inOrder<T>(order: readonly string[], known: ReadonlyMap<string, T>): T[] {
  return order.flatMap((id) => {
    const entry = known.get(id);
    return entry === undefined ? [] : [entry];
  });
}
